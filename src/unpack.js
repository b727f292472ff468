// The page's wasm travels as streams, one for what is alike, which the host packs smaller: xtask/src/pack.rs writes them
// and tells the form. Whatever does not fit that form throws.
export function unpack(packed) {
  let at = 0;
  const take = (count) => packed.subarray(at, (at += count));
  const number = () => {
    let value = 0;
    for (let shift = 0, byte = 128; byte > 127 && shift < 21; shift += 7) {
      byte = packed[at++];
      value |= (byte & 127) << shift;
    }
    return value;
  };

  const out = new Uint8Array(number());
  let to = number();
  const sizes = Uint32Array.from({ length: 256 }, number);
  // For each code: its form, how many bytes it stands for, where what follows them comes from.
  const [form, long, stream] = [take(256), take(256), take(256)];
  const near = take(768);
  let all = 0;
  const first = Uint16Array.from(long, (it) => (all += it) - it);
  const literal = take(all);
  out.set(take(to));
  const ends = sizes.map((size) => (at += size));
  const place = ends.map((end, i) => end - sizes[i]);
  const last = [0, 0, 0, 0, 0];
  const codes = packed.subarray(place[1], (place[1] = ends[1]));

  for (let i = 0, start = to; i < codes.length; i += 1) {
    const code = codes[i];
    const kind = form[code];
    for (let each = 0; each < long[code]; each += 1) out[to++] = literal[first[code] + each];
    let source = stream[code] + near[(kind & 96) * 8 + (codes[i + 1] ?? 0)];
    if (kind & 16) {
      // A word: a length, or what has to be added to the one before of its kind.
      const wide = kind & 15;
      let word = 0;
      for (let each = 0; each < wide; each += 1) word |= packed[place[source++]++] << (8 * each);
      if (wide < 3) last[3] += word;
      else word = last[wide] = (last[wide] + word) & 0xffffff;
      for (let left = 4; left; left -= 1, word >>= 8) out[to++] = word;
    } else {
      for (let left = kind & 15; left; left -= 1) {
        const byte = packed[place[source]++];
        out[to++] = byte;
        // A number ends by itself.
        if (kind & 1 && byte < 128) break;
      }
    }
    // A function ends, and its size goes before it.
    if (kind & 128) {
      let size = to - start;
      const wide = size < 128 ? 1 : size < 16384 ? 2 : 3;
      out.copyWithin(start + wide, start, to);
      for (let left = wide; left; left -= 1, size >>= 7) out[start++] = left > 1 ? size & 127 | 128 : size;
      start = to += wide;
    }
  }
  if (to !== out.length || at !== packed.length || place.some((it, i) => it !== ends[i])) throw new RangeError("not packed");
  return out;
}
