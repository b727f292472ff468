// What may go wrong between host and page before it runs: wrong types, wrong bytes, files that are gone, foreign frames.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { after, test } from "node:test";
import { anotherBuild, buildOf, cleanUp, filesOf, keptOffline, newHost } from "./builds.mjs";
import { axe, DIST, laidOut, openContext, openPage, stop, troublesOf } from "./harness.mjs";
import { FOLDER } from "./server.mjs";
import { eventually } from "./sheet.mjs";

after(async () => {
  await stop();
  await cleanUp();
});

const rescued = (page) => page.getByRole("heading", { name: "The page stopped." }).waitFor();
const wasm = (name) => name.endsWith(".wasm");
const glue = (name) => /^torpor-.*\.js$/.test(name);

for (const type of ["application/octet-stream", "text/plain", ""]) test(`wasm served as "${type}" runs`, async () => {
  const host = await newHost();
  host.answer = (name) => (wasm(name) ? { headers: { "content-type": type } } : {});
  const page = await openPage({ host });
  const told = troublesOf(page).filter((it) => !it.includes("application/wasm"));
  assert.deepEqual(told, []);
  await page.context().close();
});

const whole = await readFile(join(DIST, (await filesOf()).find(wasm)));
// A section of the author's own, "x", which wasm lets anybody add: it would run.
const longer = Buffer.concat([whole, Buffer.from([0, 2, 1, 0x78])]);
const flipped = Buffer.from(whole);
flipped[whole.length >> 1] ^= 1;

for (const [what, answer] of [
  ["wasm that is gone", (name) => wasm(name) && { status: 404 }],
  ["wasm that a host refuses", (name) => wasm(name) && { status: 403, body: "no" }],
  ["half of the wasm", (name) => wasm(name) && { body: whole.subarray(0, whole.length >> 1) }],
  ["a wrong byte in the wasm", (name) => wasm(name) && { body: flipped }],
  ["wasm with more in it", (name) => wasm(name) && { body: longer }],
  ["another page in place of the wasm", (name) => wasm(name) && { body: "<!doctype html>" }],
  ["a script that is gone", (name) => glue(name) && { status: 404 }],
  ["a script of another type", (name) => glue(name) && { headers: { "content-type": "text/html" } }],
  ["half of the script", (name) => glue(name) && { body: "export default function (" }],
]) test(`${what} shows the rescue panel, and Reload works once the host does`, async () => {
  const host = await newHost();
  host.answer = (name) => answer(name) || {};
  const page = await openPage({ host, ready: false, before: (page) => page.addInitScript(() => localStorage.setItem("torpor.bike", "kept")) });
  await rescued(page);
  await page.getByRole("button", { name: "Copy what is stored" }).click();
  assert.deepEqual(JSON.parse(await page.getByLabel("What is stored").inputValue()), { "torpor.bike": "kept" });
  host.answer = () => undefined;
  await page.evaluate(() => localStorage.clear());
  await page.getByRole("button", { name: "Reload" }).click();
  await page.locator("main").waitFor();
  await page.context().close();
});

test("wasm that the browser may not fetch shows the rescue panel", async () => {
  const page = await openPage({ ready: false, before: (page) => page.route("**/*.wasm", (route) => route.abort("blockedbyclient")) });
  await rescued(page);
  await axe(page);
  await page.context().close();
});

test("Reload goes past a script that a cache has only half", async () => {
  const host = await newHost();
  const keep = { "cache-control": "max-age=86400" };
  host.answer = (name) => ({ headers: keep, ...(glue(name) ? { body: "export default function (" } : {}) });
  const page = await openPage({ host, ready: false });
  await rescued(page);
  host.answer = () => ({ headers: keep });
  await page.getByRole("button", { name: "Reload" }).click();
  await page.locator("main").waitFor();
  await page.context().close();
});

test("an old index.html out of a cache names files that are gone: Reload brings the new one", async () => {
  const host = await newHost();
  host.answer = (name) => (name === "index.html" ? { headers: { "cache-control": "max-age=86400" } } : {});
  const context = await openContext();
  const first = await openPage({ host, context });
  await first.close();
  host.folders.set(FOLDER, await anotherBuild("newer"));
  const page = await openPage({ host, context, ready: false });
  await rescued(page);
  assert.deepEqual(await page.evaluate(() => ({ ...document.documentElement.dataset })), { boot: "newer" }, "the old index, the new script");
  await page.getByRole("button", { name: "Reload" }).click();
  await eventually(async () => assert.deepEqual(await buildOf(page), ["newer"]), 10_000);
  await laidOut(page);
  await context.close();
});

test("a build that does not start is left for the next one by Reload", async () => {
  const host = await newHost();
  const context = await openContext({ workers: true });
  const first = await openPage({ host, context });
  await keptOffline(first);
  await first.close();
  host.folders.set(FOLDER, await anotherBuild("mended"));
  // As a fault in the kept build would: its wasm traps.
  const page = await openPage({
    host, context, ready: false,
    before: (page) => page.addInitScript(() => {
      if (document.documentElement?.dataset.index) return;
      for (const way of ["instantiateStreaming", "instantiate"]) {
        const real = WebAssembly[way];
        WebAssembly[way] = (...all) =>
          document.documentElement.dataset.index ? real.apply(WebAssembly, all) : Promise.reject(new WebAssembly.RuntimeError("unreachable"));
      }
    }),
  });
  await rescued(page);
  await page.getByRole("button", { name: "Reload" }).click();
  await eventually(async () => assert.deepEqual(await buildOf(page), ["mended"]), 10_000);
  await laidOut(page);
  await context.close();
});

test("in a frame of another page it does not start, and offers to open by itself", async () => {
  const host = await newHost();
  const foreign = await newHost();
  foreign.answer = (name) => (name === "frame.html" ? { body: `<iframe title="framed" src="${host.url}#layup" width="600" height="400"></iframe>` } : {});
  const context = await openContext({ workers: true });
  const page = await context.newPage();
  await page.goto(`${foreign.url}frame.html`);
  const frame = page.frameLocator("iframe");
  const link = frame.getByRole("link", { name: "Open Torpor by itself" });
  await link.waitFor();
  await page.waitForTimeout(300);
  assert.equal(await frame.locator("main").count(), 0);
  assert.equal(await frame.getByText("being laid out").isVisible(), false);
  assert.ok(!host.asked.some((it) => it.endsWith("sw.js")), "nothing is set up");
  const [own] = await Promise.all([context.waitForEvent("page"), link.click()]);
  await own.locator("main").waitFor();
  assert.equal(own.url(), host.url);
  await context.close();
});
