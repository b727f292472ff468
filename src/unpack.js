// The page's wasm travels as streams, one for what is alike, which the host packs smaller: xtask/src/pack.rs writes them
// and tells the form. The codes are read by a small wasm of its own at the head of the file (unpack.wat), which runs at full
// pace at once, as a script does not. Whatever does not fit that form throws.
export function unpack(packed) {
  let at = 0;
  const take = (count) => (at += count) - count;
  const number = () => {
    let value = 0;
    for (let shift = 0, byte = 128; byte > 127 && shift < 21; shift += 7) {
      byte = packed[at++];
      value |= (byte & 127) << shift;
    }
    return value;
  };

  const reader = packed.subarray(take(number()), at);
  const size = number();
  const before = number();
  const sizes = Array.from({ length: 256 }, number);
  // For each code its form, how many bytes it stands for, the stream of what follows; what the next code adds to that.
  const form = take(6 * 256);
  let all = 0;
  const first = Uint16Array.from(packed.subarray(form + 256, form + 512), (it) => (all += it) - it);
  take(all);
  const head = take(before);
  const begin = at;
  const ends = sizes.map(take).map((from, i) => from + sizes[i]);
  if (at !== packed.length || before > size) throw new RangeError("not packed");

  // The memory as the reader has it, then the file, then what is made of it and a word's room.
  const file = 2048;
  const out = file + packed.length;
  const memory = new WebAssembly.Memory({ initial: ((out + size) >> 16) + 2 });
  const bytes = new Uint8Array(memory.buffer);
  const words = new Uint32Array(memory.buffer);
  const to = out + before;
  words.set(ends.map((end, i) => file + end - sizes[i]));
  bytes.set(new Uint8Array(first.buffer), 1024);
  words[389] = to;
  bytes.set(packed, file);
  bytes.copyWithin(out, file + head, file + begin);
  const { exports } = new WebAssembly.Instance(new WebAssembly.Module(reader), { a: { a: memory } });
  const codes = words[1];
  words[1] = file + ends[1];
  const end = exports.a(codes, words[1], file + form, to);
  if (end !== out + size || ends.some((it, i) => file + it !== words[i])) throw new RangeError("not packed");
  return bytes.subarray(out, end);
}
