// What undoes the packed form of the page's wasm (xtask/src/pack.rs), given what is none. That it undoes what is one, the
// build holds for the page and the chores' own tests for every sort of instruction.
import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import { test } from "node:test";

const at = (path) => new URL(`../../${path}`, import.meta.url);
const script = await readFile(at("src/unpack.js"), "utf8");
const { unpack } = await import(`data:text/javascript,${encodeURIComponent(script)}`);

/** The same numbers each time, below `end`. */
let seed = 1;
const random = (end) => {
  seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
  return Math.floor((seed / 2 ** 32) * end);
};

const refused = (bytes) => assert.throws(() => unpack(bytes), RangeError);

test("noise of any length is refused", { timeout: 60_000 }, () => {
  for (let length = 0; length < 6000; length += 1 + random(40)) {
    refused(Uint8Array.from({ length }, () => random(256)));
    // Small numbers get further.
    refused(Uint8Array.from({ length }, () => random(9)));
  }
});

test("the page's own wasm, cut or lengthened, is refused, and damaged it ends soon", { timeout: 60_000 }, async () => {
  const name = (await readdir(at("dist/"))).find((it) => it.endsWith(".packed.wasm"));
  assert.ok(name, "The page in dist/ was built without wasm-opt: see what `cargo xtask build` says of it.");
  const whole = new Uint8Array(await readFile(at(`dist/${name}`)));
  assert.ok(WebAssembly.validate(unpack(whole)));
  for (let times = 0; times < 40; times += 1) refused(whole.subarray(0, random(whole.length)));
  const longer = new Uint8Array(whole.length + 1);
  longer.set(whole);
  refused(longer);
  // Behind what reads the codes: damaged, that may do anything, and only the digest stands before it.
  assert.ok(whole[0] > 127 && whole[1] < 128, "its size takes two bytes");
  const from = 2 + (whole[0] & 127) + whole[1] * 128;
  for (let times = 0; times < 40; times += 1) {
    const damaged = whole.slice();
    // Half of them in what tells the form.
    damaged[from + random(times % 2 ? damaged.length - from : 3000)] ^= 1 << random(8);
    try {
      assert.equal(unpack(damaged).length, unpack(whole).length);
    } catch (failure) {
      // That of a place outside of the memory.
      if (!(failure instanceof RangeError || failure instanceof WebAssembly.RuntimeError)) throw failure;
    }
  }
});
