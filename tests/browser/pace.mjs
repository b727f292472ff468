// Measures the built page beside the smallest one that Leptos makes, for `cargo xtask bench`: one line a figure, its name,
// a tab, and all that was measured, in ms unless the name says otherwise. What is compared is measured in turns, so that
// whatever else the machine does falls on both. No judgement here: xtask/src/bench.rs has the budgets.
import assert from "node:assert/strict";
import { loadavg } from "node:os";
import { setTimeout } from "node:timers/promises";
import { keptOffline } from "./builds.mjs";
import { DIST, openContext, openPage, stop } from "./harness.mjs";
import { ownBike, takeInMany, withFasteners, withLongSeason } from "./prepared.mjs";
import { compressed, serve } from "./server.mjs";
import { kept, stored } from "./sheet.mjs";
import { OF_BATTERY, OF_TORQUES, typist } from "./strokes.mjs";

const [smallestFolder] = process.argv.slice(2);
assert.ok(smallestFolder, "Give the folder of the smallest page.");

const VISITS = 20;
const TURNS = 8;
const STROKES = 12; // a turn
const KEYS = 500;
const SLOWED = 4;

const figures = new Map();
const note = (name, ...values) => figures.set(name, [...(figures.get(name) ?? []), ...values]);

/** In a page, before any script of its own: when the first answer stood laid out, and the last; what was long, what the wasm holds. */
function watch() {
  window.longTasks = [];
  const laidOut = () => {
    document.body.getBoundingClientRect();
    return performance.now();
  };
  new PerformanceObserver((list) => window.longTasks.push(...list.getEntries().map((it) => it.duration))).observe({ type: "longtask", buffered: true });
  const painted = new Promise((resolve) => {
    new PerformanceObserver((list) => {
      const first = list.getEntries().find((it) => it.name === "first-contentful-paint");
      if (first) resolve(first.startTime);
    }).observe({ type: "paint", buffered: true });
  });
  const answered = new Promise((resolve) => {
    const seen = new MutationObserver(() => {
      if (![...document.querySelectorAll("output")].some((it) => /\d/.test(it.textContent))) return;
      seen.disconnect();
      resolve((window.wholeAt = laidOut()));
      const main = document.querySelector("main") ?? document.body;
      const rest = new MutationObserver(() => (window.wholeAt = laidOut()));
      rest.observe(main, { childList: true, subtree: true });
      // Keystrokes are not to wait for it.
      setTimeout(() => rest.disconnect(), 400);
    });
    seen.observe(document, { childList: true, characterData: true, subtree: true });
  });
  window.firsts = Promise.all([painted, answered]);
  window.firsts.then(() => console.debug("answered"));
  for (const way of ["instantiate", "instantiateStreaming"]) {
    const own = WebAssembly[way];
    WebAssembly[way] = async (...all) => {
      const made = await own.apply(WebAssembly, all);
      const { exports } = made.instance ?? made;
      window.memoryOfWasm = Object.values(exports).find((it) => it instanceof WebAssembly.Memory);
      return made;
    };
  }
}

/** A visit in a new tab: first paint and first answer since it began. */
async function visit(name, context, url) {
  const page = await context.newPage();
  const failed = new Promise((_, fail) => page.once("pageerror", fail));
  const told = page.waitForEvent("console", { predicate: (it) => it.text() === "answered", timeout: 30_000 });
  // Nothing is asked of the page until it has answered: what asks is compiled there, beside what is measured.
  await page.goto(url, { waitUntil: "commit" });
  await Promise.race([told.catch(() => assert.fail(`${name}: no answer at ${url}`)), failed]);
  const [painted, answered] = await page.evaluate(() => window.firsts);
  note(`${name} first paint`, painted);
  note(`${name} first answer`, answered);
  return page;
}

/** When all of it stood, where nobody has touched it, and long tasks until half a second after the first answer. */
async function settled(name, page) {
  await longTasks(name, page);
  note(`${name} whole`, await page.evaluate(() => window.wholeAt));
}

async function longTasks(name, page) {
  // Observers hear of a task some time after it.
  await page.waitForTimeout(500);
  const all = await page.evaluate(() => window.longTasks);
  note(`${name} long tasks count`, all.length);
  note(`${name} long tasks longest`, Math.max(0, ...all));
}

async function firstAnswers(torpor, smallest) {
  for (let turn = 0; turn <= VISITS; turn += 1) {
    // The first turn finds disks and processes cold.
    const [mine, its] = turn === 0 ? ["warm-up", "warm-up"] : ["torpor cold", "smallest cold"];
    const context = await openContext({ workers: true });
    await context.addInitScript(watch);
    const page = await visit(mine, context, torpor.url);
    await settled(mine, page);
    await keptOffline(page);
    await page.close();
    const again = await visit(turn === 0 ? "warm-up" : "torpor worker", context, torpor.url);
    const [{ workerStart }] = await again.evaluate(() => performance.getEntriesByType("navigation").map((it) => it.toJSON()));
    assert.ok(workerStart > 0, "the worker answered");
    await context.close();

    const other = await openContext({ workers: true });
    await other.addInitScript(watch);
    await settled(its, await visit(its, other, smallest.url));
    await other.close();
  }
}

async function keystrokes(smallest) {
  const before = (page) => page.addInitScript(watch);
  const small = await openPage({ host: smallest, before, ready: false, workers: true });
  await small.locator("output").waitFor();
  const [torques, battery] = [await withFasteners(12, { before }), await withLongSeason({ before })];
  const at = async (name, page, how, key, text) => ({ name, key, text, typist: await typist(page, ...how) });
  const all = [
    await at("smallest keystroke", small, ["", "output"], "number", (count) => `${count + 2}`),
    await at("torpor keystroke one fastener", torques, OF_TORQUES, "torque", (count) => `${21 + (count % 30)}`),
    await at("torpor keystroke wrench length", torques, OF_TORQUES, "wrench_length", (count) => `${201 + count}`),
    await at("torpor keystroke battery season", battery, OF_BATTERY, "key_off_draw", (count) => (4 + count / 10).toFixed(1)),
  ];
  let count = 0;
  for (let turn = 0; turn <= TURNS; turn += 1) {
    const counts = Array.from({ length: STROKES }, () => (count += 1));
    for (const { name, key, text, typist } of all) {
      await typist.debug.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
      const took = (await typist.strokes(key, counts.map(text))).map((it) => it.wall);
      await typist.debug.send("Emulation.setCPUThrottlingRate", { rate: 1 });
      // In the first turn strokes are compiled while they run.
      note(turn === 0 ? "warm-up" : name, ...took);
    }
  }
  for (const page of [small, torques, battery]) await page.context().close();
}

/** What a page holds, in kB. */
async function held(name, page, debug) {
  // Twice: what the first one lets go of may hold something in its turn.
  for (let time = 0; time < 2; time += 1) await debug.send("HeapProfiler.collectGarbage");
  const { metrics } = await debug.send("Performance.getMetrics");
  const of = (what) => metrics.find((it) => it.name === what).value;
  note(`torpor memory ${name} script kB`, of("JSHeapUsedSize") / 1024);
  note(`torpor memory ${name} elements count`, of("Nodes"));
  note(`torpor memory ${name} wasm kB`, await page.evaluate(() => window.memoryOfWasm.buffer.byteLength / 1024));
}

/** Keys as a hand presses them, each with its frame. */
async function manyKeys() {
  const page = await withFasteners(12, { before: (page) => page.addInitScript(watch) });
  const debug = await page.context().newCDPSession(page);
  await debug.send("Performance.enable");
  const input = page.locator("#line-torques-torque");
  await input.fill("");
  await held("before", page, debug);
  await page.evaluate(() => {
    window.longTasks = [];
    window.inputs = 0;
    addEventListener("input", () => (window.inputs += 1));
  });
  await debug.send("Emulation.setCPUThrottlingRate", { rate: SLOWED });
  for (let at = 0; at < KEYS; at += 1) await page.keyboard.press(["2", "5", "Backspace", "Backspace"][at % 4]);
  await debug.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  assert.equal(await page.evaluate(() => window.inputs), KEYS);
  await longTasks("torpor keys", page);
  await held("after", page, debug);
  await page.context().close();
}

async function logbooks(torpor) {
  const contexts = [];
  for (const many of [true, false]) {
    const context = await openContext({ locale: "en-GB" });
    const page = await ownBike({ context, before: undefined, host: torpor });
    if (many) await takeInMany(page);
    await kept(page);
    const records = Object.keys(await stored(page)).filter((key) => key.startsWith("torpor.log."));
    assert.ok(many ? records.length > 100 : records.length === 0, `${records.length} records of the logbook`);
    await page.close();
    await context.addInitScript(watch);
    contexts.push([many ? "torpor many entries" : "torpor no entries", context]);
  }
  for (let turn = 0; turn <= VISITS; turn += 1) {
    for (const [name, context] of contexts) await (await visit(turn === 0 ? "warm-up" : name, context, torpor.url)).close();
  }
  for (const [, context] of contexts) await context.close();
}

const step = (what) => console.error(`   ${what}`);
const hosts = [];
try {
  note("load before", loadavg()[0]);
  for (const folder of [DIST, smallestFolder]) {
    const host = await serve(folder);
    hosts.push(host);
    host.answer = await compressed(folder);
  }
  const [torpor, smallest] = hosts;
  step(`${VISITS} first visits to either page, and Torpor’s next one from its worker`);
  await firstAnswers(torpor, smallest);
  step(`${TURNS} turns of ${STROKES} keystrokes in each line, slowed down ${SLOWED} times`);
  await keystrokes(smallest);
  step(`${KEYS} keys, slowed down ${SLOWED} times`);
  await manyKeys();
  step("Ten thousand entries in the logbook, and none");
  await logbooks(torpor);
  note("load after", loadavg()[0]);
} finally {
  await stop();
  await Promise.all(hosts.map((host) => host.close()));
}
figures.delete("warm-up");
for (const [name, values] of figures) {
  if (!name.startsWith("warm-up")) console.log(`${name}\t${values.join(" ")}`);
}
