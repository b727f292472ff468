// One file of everything that is kept: saved in one browser, restored in another; merged, damaged, with a full store, undone.
import assert from "node:assert/strict";
import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";
import { axe, clean, laidOut, noSidewaysScroll, openPage, stop } from "./harness.mjs";
import { blank, eventually, kept, line, press, stored, tick, type, unfold } from "./sheet.mjs";

after(stop);

const at = (time) => (page) => page.clock.setFixedTime(new Date(time));
const drawer = (page) => press(page, "Backup file");

async function rowan(options = {}) {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at("2026-11-20T12:00:00"), ...options });
  await press(page, "Start your own");
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("Nov 14 2026");
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "16,5" });
  await press(page, "Garage");
  await page.getByLabel("Bike", { exact: true }).fill("Rowan");
  await press(page, "Garage");
  await tick(page, "Wash and dry").check();
  await kept(page);
  return page;
}

async function save(page, name = "Save a backup file") {
  const [download] = await Promise.all([
    page.waitForEvent("download"), page.getByRole("button", { name, exact: true }).first().click(),
  ]);
  return { name: download.suggestedFilename(), text: await readFile(await download.path(), "utf8") };
}

async function open(page, text) {
  const path = join(await mkdtemp(join(tmpdir(), "torpor-")), "file.json");
  await writeFile(path, text);
  await page.getByLabel("Open a backup file").setInputFiles(path);
}

async function made() {
  const page = await rowan();
  await drawer(page);
  const file = await save(page);
  await clean(page);
  return file;
}

/** Another browser, a day later, that looks at the file. */
async function opened(text) {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at("2026-11-21T12:00:00") });
  await drawer(page);
  await open(page, text);
  return page;
}

/** Takes the file that is looked at, until its bike stands on the sheet. */
async function restore(page) {
  await press(page, "Restore");
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
}

test("what one browser saved another one restores, record for record, and Undo takes it back", async () => {
  const { name, text } = await made();
  assert.equal(name, "torpor-backup-2026-11-20.json");
  const file = JSON.parse(text);
  assert.equal(file.torpor_backup, 1);
  const bike = file.records.find((it) => it.record.startsWith("bike."));
  assert.equal(bike.name, "Rowan");
  assert.deepEqual([bike.lists[0].facts.tank_volume.text, bike.lists[0].facts.tank_volume.value_L], ["16,5", 16.5]);
  assert.ok(!text.includes("torpor.backup"));

  const page = await opened(text);
  await page.getByText("Rowan: logbook: new").waitFor();
  await page.getByText("File of Nov 20 2026.").waitFor();
  assert.deepEqual(await stored(page), {}, "nothing is taken before it was looked at");
  // Each figure of a new record, too.
  for (const it of await page.getByText("Look at it", { exact: true }).all()) await it.click();
  await page.locator(".parts").getByText("16,5 L").waitFor();
  await page.getByText("from a file: check each against the manual").waitFor();
  await axe(page);
  await restore(page);
  await page.getByText(/The backup is restored\. Facts taken: \d+, kept as they are here: 0, not readable: 0\./).waitFor();
  await page.locator("footer").getByText("Last backup: Nov 20 2026.").waitFor();
  // In the store's order, which is each browser's own.
  const again = JSON.parse((await save(page)).text);
  const sorted = ({ contents, records }) => [Object.entries(contents).sort(), records.toSorted((one, other) => (one.record < other.record ? -1 : 1))];
  assert.equal(again.made, "2026-11-21");
  assert.deepEqual(sorted(again), sorted(file), "the same, all of it");
  assert.equal(await tick(page, "Wash and dry").isChecked(), true);
  await press(page, "Undo");
  await page.getByText("Had a bike here?").waitFor();
  assert.deepEqual(Object.keys(await stored(page)), ["torpor.backup"], "the day of the last one is none of it");
  await clean(page);
});

test("records that differ are merged, taken or left as chosen", async () => {
  const { text } = await made();
  const page = await opened(text);
  await restore(page);
  const fuel = await unfold(page, "Fill up and stabilize");
  const tank = () => blank(fuel, "Tank volume").inputValue();
  await type(fuel, { "Tank volume": "17", "Fuel in the tank": "4" });
  await kept(page);
  await open(page, text);
  await page.getByText("Look at both").first().waitFor();
  for (const it of await page.getByText("Look at both").all()) await it.click();
  await page.locator(".parts").getByText("here 17 L (stays with Merge)").waitFor();
  await page.locator(".parts").getByText("in the file 16,5 L").waitFor();
  await axe(page);
  // Which of two figures stays is asked.
  await press(page, "Restore");
  const chosen = page.getByRole("combobox", { name: "Rowan", exact: true });
  await eventually(async () => assert.equal(await chosen.evaluate((it) => it === document.activeElement), true));
  assert.equal(await page.getByText("The backup is restored.").count(), 1, "only what was said before");
  await chosen.selectOption("Merge");
  await press(page, "Restore");
  await page.getByText("The backup is restored. Facts taken: 0, kept as they are here: 1, not readable: 0.").waitFor();
  await page.locator(".parts select").first().waitFor({ state: "detached" });
  assert.equal(await tank(), "17", "the one typed last");
  await open(page, text);
  await page.getByRole("combobox", { name: "Rowan", exact: true }).selectOption("Take the file’s");
  await page.getByRole("combobox", { name: "Rowan: season", exact: true }).selectOption("Leave as it is");
  await press(page, "Restore");
  await eventually(async () => assert.equal(await tank(), "16,5"));
  assert.equal(await blank(fuel, "Fuel in the tank").inputValue(), "4", "of the season, which was left");
  await press(page, "Undo");
  await eventually(async () => assert.equal(await tank(), "17"));
  await page.reload();
  await laidOut(page);
  await unfold(page, "Fill up and stabilize");
  assert.equal(await tank(), "17");
  await clean(page);
});

test("a damaged file gives what is whole and names the rest; other files are told where they belong", async () => {
  const { text } = await made();
  const page = await openPage({ locale: "en-GB", hash: "#layup", viewport: { width: 320, height: 700 } });
  await drawer(page);
  // Cut off within the last record; and without the bike, whose season is then nobody's.
  await open(page, text.slice(0, text.lastIndexOf('"record": "') + 60));
  const { records } = JSON.parse(text);
  await page.locator(".parts").getByText(`${records.at(-1).name}: damaged or missing`).waitFor();
  for (const it of records.slice(0, -1)) await page.getByText(`${it.name}: damaged or missing`).waitFor({ state: "detached" });
  const without = { ...JSON.parse(text), records: records.filter((it) => !it.record.startsWith("bike.")) };
  await open(page, JSON.stringify(without));
  await page.getByText("Rowan: damaged or missing").waitFor();
  await page.getByText("Rowan: season: left out, as its bike is not in this file").waitFor();
  await noSidewaysScroll(page);
  await open(page, text.replace('"torpor_backup": 1', '"torpor_backup": 2'));
  await page.getByText("made by a newer Torpor").waitFor();
  assert.equal(await page.getByRole("button", { name: "Restore", exact: true }).count(), 0);
  await open(page, '{"torpor_logbook": 1, "entries": []}');
  await page.getByText("This is no backup file: one is named torpor-backup and a day.").waitFor();
  const hostile = { record: "bike.a", name: "<img src=x onerror=alert(1)>", lists: [{ facts: { bike_name: { text: "<b>\u202eAlder" } } }] };
  const other = { record: "../neighbor", name: "x", stored: "1" };
  await open(page, JSON.stringify({ torpor_backup: 1, records: [hostile, other] }));
  await page.getByText("<img src=x onerror=alert(1)>: new").waitFor();
  await page.getByText("x: no record of Torpor’s").waitFor();
  await press(page, "Restore");
  await page.getByRole("heading", { name: "<b>Alder", exact: true }).waitFor();
  assert.ok(Object.keys(await page.evaluate(() => ({ ...localStorage }))).every((it) => it.startsWith("torpor.")));
  await noSidewaysScroll(page);
  await clean(page);
});

test("with a full store all stays as it was, and the file is offered", async () => {
  const { text } = await made();
  const page = await openPage({ locale: "en-GB", hash: "#layup" });
  await page.evaluate(() => {
    let piece = "x".repeat(1 << 20);
    for (let at = 0; piece; at += 1) {
      try { localStorage.setItem(`neighbor.${at}`, piece); } catch { piece = piece.slice(piece.length / 2); if (piece.length < 2) break; }
    }
  });
  await drawer(page);
  await open(page, text);
  await press(page, "Restore");
  await page.getByRole("alert").getByText("keep the link or a backup file meanwhile").waitFor();
  assert.deepEqual(await stored(page), {});
  await page.getByRole("alert").getByRole("button", { name: "Save a backup file" }).waitFor();
  await clean(page);
});

test("where the store is blocked what is on the sheet is saved", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", blockStorage: true });
  await page.getByRole("alert").getByText("Keep the link or a backup file instead.").waitFor();
  await press(page, "Start your own");
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "19" });
  await tick(page, "Wash and dry").check();
  const { text } = await save(page);
  assert.ok(text.includes('"tank_volume": { "text": "19", "unit": "L", "value_L": 19'));
  assert.ok(text.includes('"group_0"'), "the logbook, too");
  await clean(page);
});

test("when the last backup was, and a reminder once it is parked", async () => {
  const page = await rowan();
  const due = page.getByText("Save a backup file now");
  await due.waitFor();
  await page.locator("footer").getByText("No backup yet.").waitFor();
  await drawer(page);
  await save(page);
  await due.waitFor({ state: "detached" });
  await page.locator("footer").getByText("Last backup: Nov 20 2026.").waitFor();
  await page.reload();
  await laidOut(page);
  await page.locator("footer").getByText("Last backup: Nov 20 2026.").waitFor();
  assert.equal(await due.count(), 0);
  await clean(page);
});

test("a removed bike comes out of the archive beside a live one of its key", async () => {
  const page = await rowan();
  const bikes = async () => Object.keys(await stored(page)).filter((it) => it.startsWith("torpor.bike."));
  const [key] = await bikes();
  // As its removal leaves it, beside the live one that a backup then brings.
  await page.evaluate((key) => {
    for (const it of [key, key.replace("bike", "season")]) {
      localStorage.setItem(it.replace("torpor.", "torpor.removed.2026-11-19."), localStorage.getItem(it));
    }
  }, key);
  const live = (await stored(page))[key];
  await page.reload();
  await laidOut(page);
  await press(page, "Garage");
  await page.getByRole("button", { name: "Archived" }).click();
  await page.getByRole("button", { name: /^Bring back/ }).click();
  await eventually(async () => assert.equal((await bikes()).length, 2));
  assert.equal((await stored(page))[key], live, "nothing is written over it");
  await clean(page);
});

test("a removed bike that is restored long after can be brought back for thirty days more", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at("2027-03-01T12:00:00") });
  const list = [{ facts: { bike_name: { text: "Rowan" }, tank_volume: { text: "15", unit: "L" } } }];
  await drawer(page);
  await open(page, JSON.stringify({ torpor_backup: 1, records: [{ record: "removed.2026-11-20.bike.a1", name: "Rowan, removed", lists: list }] }));
  await press(page, "Restore");
  const only = () => eventually(async () => assert.deepEqual(Object.keys(await stored(page)).filter((it) => it.includes("bike.")), ["torpor.removed.2027-03-01.bike.a1"]));
  await only();
  await page.reload();
  await laidOut(page);
  await only();
  await press(page, "Garage");
  await press(page, "Archived");
  await page.getByText("Mar 31 2027").first().waitFor();
  await press(page, "Bring back Rowan");
  await press(page, "Open Rowan");
  await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(line(page, "Fill up and stabilize"), "Tank volume").inputValue(), "15");
  await clean(page);
});

test("what was changed after a restore stays when that is taken back, and all else goes back", async () => {
  const page = await rowan();
  await drawer(page);
  const { text } = await save(page);
  const fuel = await unfold(page, "Fill up and stabilize");
  const tank = blank(fuel, "Tank volume");
  await tank.fill("17");
  await tick(page, "Cover").check();
  await kept(page);
  await open(page, text);
  for (const name of ["Rowan", "Rowan: season", "Rowan: logbook"]) {
    await page.getByRole("combobox", { name, exact: true }).selectOption("Take the file’s");
  }
  await press(page, "Restore");
  await eventually(async () => assert.equal(await tank.inputValue(), "16,5"));
  assert.equal(await tick(page, "Cover").isChecked(), false);
  // In the bike's record and in the season's.
  const battery = await unfold(page, "Battery");
  await blank(battery, "Capacity").fill("12");
  await blank(fuel, "Fuel in the tank").fill("4");
  await kept(page);
  await press(page, "Undo");
  const whole = async () => {
    await eventually(async () => assert.equal(await tank.inputValue(), "17"));
    assert.equal(await blank(battery, "Capacity").inputValue(), "12");
    assert.equal(await blank(fuel, "Fuel in the tank").inputValue(), "4");
    for (const title of ["Wash and dry", "Cover"]) assert.equal(await tick(page, title).isChecked(), true, title);
  };
  await whole();
  await page.reload();
  await laidOut(page);
  await unfold(page, "Fill up and stabilize");
  await unfold(page, "Battery");
  await whole();
  await press(page, "Logbook");
  for (const title of ["Wash and dry", "Cover"]) await page.getByRole("region", { name: "Logbook", exact: true }).getByRole("button", { name: new RegExp(`${title}$`) }).waitFor();
  await clean(page);
});

test("a restored bike that was changed since stays when the restore is taken back, and that is said", async () => {
  const { text } = await made();
  const page = await opened(text);
  await restore(page);
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "17" });
  await kept(page);
  await press(page, "Undo");
  await page.getByText("Rowan: not all taken back, as it was changed since").waitFor();
  assert.equal(await blank(line(page, "Fill up and stabilize"), "Tank volume").inputValue(), "17");
  await clean(page);
});

test("a past season that would be seen nowhere is not taken; the others keep their places", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at("2026-11-14T12:00:00") });
  await drawer(page);
  const lists = (day) => [{ facts: { park_date: { text: day } } }];
  await open(page, JSON.stringify({ torpor_backup: 1, records: [
    { record: "bike.a1", name: "Rowan", lists: [{ facts: { bike_name: { text: "Rowan" } } }] },
    { record: "season.a1", name: "Rowan: season", lists: lists("2026-11-14") },
    { record: "past.a1.4095", name: "Rowan: past season", lists: lists("2020-11-14") },
    { record: "past.a1.4096", name: "Too far", lists: lists("2021-11-14") },
  ] }));
  await page.getByText("Too far: no record of Torpor’s").waitFor();
  await restore(page);
  const park = blank(line(page, "Season"), "Park date");
  await press(page, "Logbook");
  const past = page.getByText(/to no day/);
  await park.fill("2026-11-14");
  await tick(page, "Close exhaust and intake").check();
  await kept(page);
  await press(page, "Begin the next season");
  await eventually(async () => assert.equal(await past.count(), 2));
  for (const day of ["Nov 14 2020", "Nov 14 2026"]) await page.getByText(new RegExp(`${day} to no day`)).waitFor();
  await clean(page);
});
