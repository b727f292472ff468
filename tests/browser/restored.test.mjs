// A restore and its Undo beside another tab: what was put back stays so, in both and after a reload.
import assert from "node:assert/strict";
import { mkdtemp, readFile, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as wait } from "node:timers/promises";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import { blank, eventually, kept, press, tick, unfold } from "./sheet.mjs";

after(stop);

const FUEL = "Fill up and stabilize";
const at = (page) => page.clock.setFixedTime(new Date("2026-11-20T12:00:00"));
const fact = async (page, label) => blank(await unfold(page, FUEL), label);
const holds = (page, label, text) => eventually(async () => assert.equal(await (await fact(page, label)).inputValue(), text), 5000);
const undo = (page) => page.getByText("The backup is restored.").locator("xpath=..").getByRole("button", { name: "Undo", exact: true }).click();
/** Longer than what waits to be written, told and answered by another tab takes. */
const settled = () => wait(1500);

async function rowan(context) {
  const page = await openPage({ hash: "#layup", before: at, context });
  await press(page, "Start your own");
  await (await fact(page, "Tank volume")).fill("15");
  await (await fact(page, "Stabilizer label")).fill("30 mL per 10 L");
  await press(page, "Garage");
  await page.getByLabel("Bike", { exact: true }).fill("Rowan");
  await press(page, "Garage");
  await tick(page, "Wash and dry").check();
  await kept(page);
  await press(page, "Backup file");
  const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save a backup file", exact: true }).first().click()]);
  return { page, text: await readFile(await file.path(), "utf8") };
}

async function take(page, text, names) {
  const path = join(await mkdtemp(join(tmpdir(), "torpor-")), "file.json");
  await writeFile(path, text);
  await page.getByLabel("Open a backup file").setInputFiles(path);
  for (const name of names) await page.getByRole("combobox", { name, exact: true }).selectOption("Take the file’s");
  await press(page, "Restore");
  await page.getByText("The backup is restored.").waitFor();
}

test("of the bike that another tab has on its sheet", async () => {
  const context = await openContext({ locale: "en-GB" });
  const { page: one, text } = await rowan(context);
  await (await fact(one, "Tank volume")).fill("17");
  await tick(one, "Cover").check();
  await kept(one);
  const other = await openPage({ context, hash: "#layup", before: at });
  await holds(other, "Tank volume", "17");
  await press(other, "Logbook");
  const book = other.getByRole("region", { name: "Logbook", exact: true });
  const cover = book.getByRole("button", { name: /Cover$/ });
  await cover.waitFor();
  await take(one, text, ["Rowan", "Rowan: season", "Rowan: logbook"]);
  for (const page of [one, other]) await holds(page, "Tank volume", "15");
  await eventually(async () => assert.equal(await tick(other, "Cover").isChecked(), false), 5000);
  await settled();
  await undo(one);
  await holds(one, "Tank volume", "17");
  await settled();
  for (const again of [false, true]) {
    if (again) {
      await one.reload();
      await laidOut(one);
    }
    for (const page of [one, other]) {
      await holds(page, "Tank volume", "17");
      await eventually(async () => assert.equal(await tick(page, "Cover").isChecked(), true), 5000);
    }
    await cover.waitFor();
  }
  await clean(other);
  await clean(one);
  await context.close();
});

test("of the garage, while another tab has another bike on its sheet", async () => {
  const context = await openContext({ locale: "en-GB" });
  const { page: one, text } = await rowan(context);
  await (await fact(one, "Stabilizer label")).fill("50 mL per 10 L");
  await kept(one);
  const other = await openPage({ context, hash: "#layup", before: at });
  await press(other, "Garage");
  await other.getByRole("button", { name: "New bike", exact: true }).last().click();
  await (await fact(other, "Tank volume")).fill("9");
  await kept(other);
  await settled();
  await take(one, text, ["Garage, shelf and wrenches"]);
  for (const page of [one, other]) await holds(page, "Stabilizer label", "30 mL per 10 L");
  await settled();
  await undo(one);
  await holds(one, "Stabilizer label", "50 mL per 10 L");
  await settled();
  await one.reload();
  await laidOut(one);
  for (const page of [one, other]) await holds(page, "Stabilizer label", "50 mL per 10 L");
  await clean(other);
  await clean(one);
  await context.close();
});

test("pressed twice while another tab has its turn, it is done once, and Undo takes it back", async () => {
  const page = await openPage({ hash: "#layup", before: at });
  const file = (tank) => JSON.stringify({ torpor_backup: 1, records: [{ record: "bike.a1", name: "Rowan", lists: [{ facts: { bike_name: { text: "Rowan", edited: 5 }, tank_volume: { text: tank, unit: "L", edited: 9 } } }] }] });
  await press(page, "Backup file");
  await take(page, file("15"), []);
  await holds(page, "Tank volume", "15");
  await kept(page);
  await page.reload();
  await laidOut(page);
  await press(page, "Backup file");
  const path = join(await mkdtemp(join(tmpdir(), "torpor-")), "file.json");
  await writeFile(path, file("17"));
  await page.getByLabel("Open a backup file").setInputFiles(path);
  await page.getByRole("combobox", { name: "Rowan", exact: true }).selectOption("Take the file’s");
  await page.evaluate(() => new Promise((mine) => {
    navigator.locks.request("torpor.store", () => new Promise((done) => { setTimeout(done, 1000); mine(); }));
  }));
  const restore = page.getByRole("button", { name: "Restore", exact: true });
  await restore.click();
  await restore.click();
  await holds(page, "Tank volume", "17");
  await settled();
  assert.equal(await page.getByRole("button", { name: "Undo", exact: true }).count(), 1);
  await undo(page);
  await holds(page, "Tank volume", "15");
  await clean(page);
});

test("of a bike that was new, what was typed since keeps it, and that is said", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at });
  const lists = (facts) => [{ facts }];
  const text = JSON.stringify({ torpor_backup: 1, records: [
    { record: "bike.a1", name: "Rowan", lists: lists({ bike_name: { text: "Rowan" } }) },
    { record: "season.a1", name: "Rowan: season", lists: lists({ coldest_night: { text: "-5", unit: "°C" } }) },
  ] });
  await press(page, "Backup file");
  await take(page, text, []);
  const park = blank(page.getByRole("region", { name: "Season", exact: true }), "Park date");
  await park.fill("2026-11-14");
  await kept(page);
  await undo(page);
  await page.getByText("Rowan: not all taken back, as it was changed since").waitFor();
  await page.reload();
  await laidOut(page);
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  await eventually(async () => assert.match(await park.inputValue(), /2026/));
  await clean(page);
});
