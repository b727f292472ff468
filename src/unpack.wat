;; Reads the codes of the packed form that xtask/src/pack.rs tells, and writes what they stand for. unpack.js calls it, the
;; build puts it at the head of the packed file.
;;
;; The memory, bytes from
;;    0  for each of 256 streams where its next byte is, as a word
;; 1024  for each of 256 codes where its bytes begin among the literals, as half a word
;; 1536  the last length and place of each width, from which the next one is counted: a word for each width of 0 to 4
;; 1556  where the function that is being written begins
(module
  (import "a" "a" (memory 1))

  ;; $at to $end: the codes. $form: the tables of the codes, as they stand in the file. $to: where to write.
  ;; What was written ends at the result.
  (func (export "a") (param $at i32) (param $end i32) (param $form i32) (param $to i32) (result i32)
    (local $code i32) (local $kind i32) (local $stream i32)
    (local $from i32) (local $left i32) (local $byte i32)
    (local $word i32) (local $wide i32)
    (loop $codes
      (local.set $code (i32.load8_u (local.get $at)))
      (local.set $at (i32.add (local.get $at) (i32.const 1)))
      (local.set $from (i32.add (local.get $form) (local.get $code)))
      (local.set $kind (i32.load8_u (local.get $from)))
      (local.set $stream (i32.load8_u offset=512 (local.get $from)))

      ;; The bytes that it stands for itself.
      (if (local.tee $left (i32.load8_u offset=256 (local.get $from)))
        (then
          (local.set $from
            (i32.add
              (i32.add (local.get $form) (i32.const 1536))
              (i32.load16_u offset=1024 (i32.shl (local.get $code) (i32.const 1)))))
          (loop $literal
            (i32.store8 (local.get $to) (i32.load8_u (local.get $from)))
            (local.set $to (i32.add (local.get $to) (i32.const 1)))
            (local.set $from (i32.add (local.get $from) (i32.const 1)))
            (br_if $literal (local.tee $left (i32.sub (local.get $left) (i32.const 1)))))))

      ;; What follows comes from its stream, which the next code may tell more closely.
      (local.set $stream
        (i32.shl
          (i32.add
            (local.get $stream)
            (i32.load8_u offset=768
              (i32.add
                (i32.add (local.get $form) (i32.load8_u (local.get $at)))
                (i32.shl (i32.and (local.get $kind) (i32.const 96)) (i32.const 3)))))
          (i32.const 2)))
      (local.set $left (i32.and (local.get $kind) (i32.const 15)))
      (if (i32.and (local.get $kind) (i32.const 16))
        (then
          ;; A word: a length, or what has to be added to the one before of its kind; each byte from a stream of its own.
          (local.set $wide (i32.shl (local.get $left) (i32.const 2)))
          (local.set $word (i32.const 0))
          (local.set $byte (i32.const 0))
          (loop $bytes
            (local.set $from (i32.load (local.get $stream)))
            (local.set $word
              (i32.or
                (local.get $word)
                (i32.shl (i32.load8_u (local.get $from)) (local.get $byte))))
            (i32.store (local.get $stream) (i32.add (local.get $from) (i32.const 1)))
            (local.set $stream (i32.add (local.get $stream) (i32.const 4)))
            (local.set $byte (i32.add (local.get $byte) (i32.const 8)))
            (br_if $bytes (local.tee $left (i32.sub (local.get $left) (i32.const 1)))))
          (if (i32.lt_u (local.get $wide) (i32.const 12))
            (then
              (i32.store offset=1548
                (i32.const 0)
                (i32.add (i32.load offset=1548 (i32.const 0)) (local.get $word))))
            (else
              (local.set $word
                (i32.and
                  (i32.add (i32.load offset=1536 (local.get $wide)) (local.get $word))
                  (i32.const 0xffffff)))
              (i32.store offset=1536 (local.get $wide) (local.get $word))))
          (i32.store (local.get $to) (local.get $word))
          (local.set $to (i32.add (local.get $to) (i32.const 4))))
        (else
          (if (local.get $left)
            (then
              (local.set $from (i32.load (local.get $stream)))
              (loop $bytes
                (local.set $byte (i32.load8_u (local.get $from)))
                (i32.store8 (local.get $to) (local.get $byte))
                (local.set $from (i32.add (local.get $from) (i32.const 1)))
                (local.set $to (i32.add (local.get $to) (i32.const 1)))
                (local.set $left (i32.sub (local.get $left) (i32.const 1)))
                ;; A number ends by itself.
                (br_if $bytes
                  (i32.and
                    (i32.ne (local.get $left) (i32.const 0))
                    (i32.or
                      (i32.eqz (i32.and (local.get $kind) (i32.const 1)))
                      (i32.gt_u (local.get $byte) (i32.const 127))))))
              (i32.store (local.get $stream) (local.get $from))))))

      ;; A function ends, and its size goes before it.
      (if (i32.and (local.get $kind) (i32.const 128))
        (then
          (local.set $from (i32.load offset=1556 (i32.const 0)))
          (local.set $word (i32.sub (local.get $to) (local.get $from)))
          (local.set $wide
            (i32.add
              (i32.const 1)
              (i32.add
                (i32.gt_u (local.get $word) (i32.const 0x7f))
                (i32.gt_u (local.get $word) (i32.const 0x3fff)))))
          (memory.copy
            (i32.add (local.get $from) (local.get $wide))
            (local.get $from)
            (local.get $word))
          (local.set $to (i32.add (local.get $to) (local.get $wide)))
          (loop $size
            (i32.store8
              (local.get $from)
              (i32.or
                (i32.and (local.get $word) (i32.const 0x7f))
                (i32.shl (i32.gt_u (local.get $wide) (i32.const 1)) (i32.const 7))))
            (local.set $word (i32.shr_u (local.get $word) (i32.const 7)))
            (local.set $from (i32.add (local.get $from) (i32.const 1)))
            (br_if $size (local.tee $wide (i32.sub (local.get $wide) (i32.const 1)))))
          (i32.store offset=1556 (i32.const 0) (local.get $to))))
      (br_if $codes (i32.lt_u (local.get $at) (local.get $end))))
    (local.get $to)))
