// The logbook: a tick writes an entry with the figures as they stood; found, changed, taken out, saved and taken in; what is
// due; the season's life. Figures that are computed are worked by hand in tests/logbook.rs.
import assert from "node:assert/strict";
import { readFile, writeFile, mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { axe, clean, noSidewaysScroll, openPage, stop } from "./harness.mjs";
import { at, book, openBook, ownBike, takeInMany, titles } from "./prepared.mjs";
import { blank, eventually, kept, line, stored, tick, type, unfold } from "./sheet.mjs";

after(stop);

const undo = (page) => page.getByRole("button", { name: "Undo", exact: true });

test("a tick writes an entry with the figures as they stood, and opening it again takes it out", async () => {
  const page = await ownBike();
  const fuel = await unfold(page, "Fill up and stabilize");
  await type(fuel, { "Tank volume": "15", "Fuel in the tank": "5", "Stabilizer label": "30 mL per 10 L" });
  await openBook(page);
  await book(page).getByText("Nothing yet: a tick on either side writes here").waitFor();
  await blank(book(page), "Odometer").fill("12345");
  await tick(page, "Fill up and stabilize").check();
  await page.getByText("Done: Fill up and stabilize. It is in the logbook.").waitFor();
  const entry = book(page).getByRole("region", { name: /Fill up and stabilize/ });
  // 14.25 L, 95 % of the tank, at 30 mL for 10 L are 42.75 mL.
  await entry.getByText(/^12345 km · Stabilizer to add 43 mL; /).waitFor();
  // The figure changes; the entry stays.
  await type(fuel, { "Tank volume": "20" });
  await entry.getByText(/Stabilizer to add 43 mL/).waitFor();

  await undo(page).click();
  assert.equal(await tick(page, "Fill up and stabilize").isChecked(), false);
  assert.deepEqual(await titles(page), []);
  await tick(page, "Fill up and stabilize").check();
  await tick(page, "Fill up and stabilize").uncheck();
  await page.getByText("Fill up and stabilize is open again; its entry is out of the logbook.").waitFor();
  assert.deepEqual(await titles(page), []);
  await undo(page).click();
  assert.equal(await tick(page, "Fill up and stabilize").isChecked(), true);
  assert.equal((await titles(page)).length, 1);
  await clean(page);
});

test("entries by hand are found, changed, taken out, taken back, and survive a reload", async () => {
  const page = await ownBike();
  await openBook(page);
  for (const [day, what, note] of [["2025-04-02", "Oil", "green washer"], ["2026-04-01", "Brake fluid", ""], ["2026-05-01", "Oil", "filter HX-12"]]) {
    await book(page).getByRole("button", { name: "Add an entry" }).click();
    const open = book(page).getByRole("region", { name: /Entry$/ });
    await type(open, { ...(note && { Remarks: note }), "What was done": what });
    // The name of the region follows what is typed.
    await type(book(page).getByRole("region", { name: new RegExp(`${what}$`) }).first(), { Day: day });
  }
  assert.deepEqual((await titles(page)).map((it) => it.replace("▸", "").replace("▾", "").trim()).sort(), ["Fri, May 1 2026 · Oil", "Wed, Apr 1 2026 · Brake fluid", "Wed, Apr 2 2025 · Oil"]);
  await kept(page);
  await page.reload();
  await openBook(page);
  const shown = async () => (await titles(page)).map((it) => it.replace("▸", "").replace("▾", "").trim());
  await eventually(async () => assert.deepEqual(await shown(), ["Fri, May 1 2026 · Oil", "Wed, Apr 1 2026 · Brake fluid", "Wed, Apr 2 2025 · Oil"]));
  await book(page).getByLabel("Search the logbook").fill("GREEN");
  await eventually(async () => assert.deepEqual(await shown(), ["Wed, Apr 2 2025 · Oil"]));
  await book(page).getByLabel("Search the logbook").fill("");
  await book(page).getByLabel("What", { exact: true }).selectOption("Oil");
  await book(page).getByLabel("Year", { exact: true }).selectOption("2026");
  await eventually(async () => assert.deepEqual(await shown(), ["Fri, May 1 2026 · Oil"]));
  await book(page).getByRole("button", { name: /Oil$/ }).click();
  await book(page).getByRole("button", { name: /^Remove/ }).click();
  await eventually(async () => assert.deepEqual(await shown(), []));
  await undo(page).click();
  await eventually(async () => assert.deepEqual(await shown(), ["Fri, May 1 2026 · Oil"]));
  await axe(page);
  await clean(page);
});

test("what is due, by the day and by the odometer", async () => {
  const page = await ownBike({ time: "2026-11-30T12:00:00" });
  await openBook(page);
  await type(book(page), { Odometer: "18500 km", "Service intervals": "Oil: 6000 km or 12 months; Air filter: 20000 km" });
  await book(page).getByRole("button", { name: "Add an entry" }).click();
  const open = book(page).getByRole("region", { name: /Entry$/ });
  await type(open, { Day: "2025-11-14", "Odometer then": "12000 km", "What was done": "Oil" });
  await book(page).getByText("Oil: 16 days past, since Sat, Nov 14 2026, 500 km past").waitFor();
  await book(page).getByText("Air filter: not in the logbook yet").waitFor();
  await type(book(page), { "Service intervals": "Oil: soon" });
  await book(page).getByText(/“soon” is not a number|is not an interval: write for example Oil: 6000 km or 12 months/).waitFor();
  await clean(page);
});

test("a saved logbook is taken in by another browser, with every row's error, and can be taken back", async () => {
  const page = await ownBike();
  await tick(page, "Wash and dry").check();
  await tick(page, "Chain").check();
  await openBook(page);
  await book(page).getByRole("button", { name: "The logbook as a file" }).click();
  const folder = await mkdtemp(join(tmpdir(), "torpor-"));
  const save = async (name) => {
    const [file] = await Promise.all([page.waitForEvent("download"), book(page).getByRole("button", { name }).click()]);
    const path = join(folder, file.suggestedFilename());
    await file.saveAs(path);
    return path;
  };
  const [csv, json] = [await save("Save as CSV"), await save("Save as JSON")];
  assert.match(csv, /logbook \d{4}-\d\d-\d\d\.csv$/, "whose it is and when it was saved");
  assert.match(await readFile(csv, "utf8"), /^\ufeffDay,What was done,.*Step\r\n/);
  assert.equal(JSON.parse(await readFile(json, "utf8")).entries.length, 2);
  const odd = join(folder, "odd.csv");
  await writeFile(odd, "Day,What was done\nsoon,Oil\n2026-01-02,Brakes\n2026-11-14,Chain\n");
  await clean(page);

  const other = await openPage({ locale: "en-GB", hash: "#layup", before: at("2026-11-14T12:00:00") });
  await openBook(other);
  await book(other).getByRole("button", { name: "The logbook as a file" }).click();
  await book(other).getByLabel("Open a CSV or JSON file").setInputFiles(json);
  await book(other).getByText("2 new, 0 in the logbook already, 0 not understood").waitFor();
  await book(other).getByRole("button", { name: "Add 2" }).click();
  await eventually(async () => assert.equal((await titles(other)).length, 2));
  await book(other).getByLabel("Open a CSV or JSON file").setInputFiles(csv);
  await book(other).getByText("0 new, 2 in the logbook already, 0 not understood").waitFor();
  await book(other).getByLabel("Open a CSV or JSON file").setInputFiles(odd);
  await book(other).getByText("1 new, 1 in the logbook already, 1 not understood").waitFor();
  await book(other).getByText(/^Row 2: Day, “soon”: /).waitFor();
  await book(other).getByRole("button", { name: "Add 1" }).click();
  await eventually(async () => assert.equal((await titles(other)).length, 3));
  await undo(other).click();
  await eventually(async () => assert.equal((await titles(other)).length, 2));
  await kept(other);
  await other.reload();
  await openBook(other);
  await eventually(async () => assert.equal((await titles(other)).length, 2));
  await clean(other);
});

test("the next season starts blank from the same facts, and the last one is put away with its ticks", async () => {
  const page = await ownBike({ time: "2027-03-28T12:00:00" });
  const sheet = page.locator("main");
  await sheet.getByText("Planned. Tick a step’s number when it is done.").waitFor();
  await page.goto(page.url().replace(/#.*/, "#layup"));
  const fuel = await unfold(page, "Fill up and stabilize");
  await type(fuel, { "Tank volume": "15", "Fuel in the tank": "5" });
  await tick(page, "Wash and dry").check();
  await sheet.getByText("Save a backup file now").waitFor();
  await page.goto(page.url().replace(/#.*/, "#wakeup"));
  // Until it is out, the way to the next season stands below all steps.
  const [first, next] = await Promise.all([tick(page, "First ride, short"), page.getByRole("button", { name: "Begin the next season" })].map(async (it) => (await it.boundingBox()).y));
  assert.ok(next > first, `${next} ${first}`);
  for (const box of await page.getByRole("checkbox").all()) if (await box.isEnabled()) await box.check();
  await eventually(async () => {
    for (const box of await page.getByRole("checkbox").all()) if (await box.isEnabled()) await box.check();
    assert.equal(await tick(page, "First ride, short").isChecked(), true);
  });
  await sheet.getByText("Out again").waitFor();
  await page.getByRole("button", { name: "Begin the next season" }).click();
  await sheet.getByText("Planned. Tick a step’s number when it is done.").waitFor();
  assert.match(page.url(), /#layup$/);
  const season = page.getByRole("region", { name: "Season", exact: true });
  assert.equal(await blank(season, "Park date").inputValue(), "");
  await openBook(page);
  const past = book(page).getByText("Sat, Nov 14 2026 to Sun, Mar 28 2027: 1 step of the lay-up done, ");
  await past.waitFor();
  await undo(page).click();
  await sheet.getByText("Out again").waitFor();
  assert.equal(await blank(season, "Park date").inputValue(), "2026-11-14");
  await past.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Begin the next season" }).click();
  await kept(page);
  await page.reload();
  await page.goto(page.url().replace(/#.*/, "#layup"));
  assert.equal(await tick(page, "Wash and dry").isChecked(), false);
  assert.equal(await blank(await unfold(page, "Fill up and stabilize"), "Tank volume").inputValue(), "15");
  await clean(page);
});

test("ten thousand entries: the page opens as soon, one more is one small record", async (t) => {
  const page = await ownBike();
  await takeInMany(page);
  await kept(page);
  const records = Object.entries(await stored(page)).filter(([key]) => key.startsWith("torpor.log."));
  const units = records.reduce((sum, [key, text]) => sum + key.length + text.length, 0);
  t.diagnostic(`${records.length} records, ${units} units of 5,242,880`);
  assert.ok(units < 5_242_880 / 2, `${units}`);
  const opened = async () => {
    const times = [];
    for (let at = 0; at < 5; at += 1) {
      await page.reload();
      await page.locator("main h1").waitFor();
      times.push(await page.evaluate(() => performance.now()));
    }
    return Math.min(...times);
  };
  const full = await opened();
  await openBook(page);
  await eventually(async () => assert.equal((await titles(page)).length, 40), 20_000);
  const search = await page.evaluate(async () => {
    const field = document.getElementById("logbook-search");
    const start = performance.now();
    field.value = "seldom";
    field.dispatchEvent(new InputEvent("input", { bubbles: true }));
    for (let turn = 0; turn < 50; turn += 1) await null;
    document.body.getBoundingClientRect();
    return performance.now() - start;
  });
  assert.equal((await titles(page)).length, 1);
  const before = await stored(page);
  await tick(page, "Wash and dry").check();
  await kept(page);
  const now = await stored(page);
  const written = Object.keys(now).filter((key) => key.startsWith("torpor.log.") && now[key] !== before[key]);
  assert.equal(written.length, 1);
  await page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith("torpor.log.")).forEach((key) => localStorage.removeItem(key)));
  const empty = await opened();
  t.diagnostic(`opens in ${full.toFixed(0)} ms, without a logbook in ${empty.toFixed(0)} ms (asked: 1.5 times); a search takes ${search.toFixed(0)} ms`);
  assert.ok(full <= 2 * empty, `${full} ms against ${empty} ms`);
  await clean(page);
});

test("on a narrow phone nothing sticks out", async () => {
  const page = await ownBike({ viewport: { width: 320, height: 700 } });
  await tick(page, "Wash and dry").check();
  await openBook(page);
  await book(page).getByRole("button", { name: /Wash and dry$/ }).click();
  await book(page).getByRole("button", { name: "The logbook as a file" }).click();
  await noSidewaysScroll(page);
  await clean(page);
});
