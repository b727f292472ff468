// A store that is full, or refuses: nothing that is kept is lost by what is done with bikes, and nothing unsaved leaves the sheet.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import { blank, eventually, fillStore, kept, line, press, roomInStore, stored, unfold } from "./sheet.mjs";

after(stop);

const FUEL = "Fill up and stabilize";
const FULL = "the browser’s store for this site is full";
const at = (page) => page.clock.setFixedTime(new Date("2026-11-14T12:00:00"));
const tank = async (page) => blank(await unfold(page, FUEL), "Tank volume");
const said = (page) => page.getByRole("alert").getByText(FULL);

/** A kept bike, First; the garage is open. */
async function first(options = {}) {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at, ...options });
  await press(page, "Start your own");
  await blank(line(page, "Season"), "Park date").fill("2026-11-14");
  await (await tank(page)).fill("15");
  await page.getByRole("checkbox", { name: "Done: Chain", exact: true }).check();
  await press(page, "Garage");
  await page.getByLabel("Bike", { exact: true }).fill("First");
  await kept(page);
  return page;
}

/** The same, in the archive; the example is on the sheet. */
async function archived() {
  const page = await first();
  await press(page, "Archive First");
  await press(page, "Archived");
  await page.getByRole("button", { name: "Remove First" }).waitFor();
  return page;
}

const ofBikes = async (page) => Object.entries(await stored(page)).filter(([key]) => /(bike|season|log)\./.test(key));

for (const which of ["all", "texts"]) test(`a bike that is removed where a store writes nothing (${which}) is there, at once or with the next try`, async () => {
  const page = await archived();
  const before = await ofBikes(page);
  assert.equal(before.length, 3);
  await fillStore(page, which);
  await press(page, "Remove First");
  await said(page).waitFor();
  if (which === "all") assert.deepEqual(await ofBikes(page), before, "nothing is gone");
  // A store that takes nothing but blanks.
  await roomInStore(page);
  await eventually(async () => assert.deepEqual(await ofBikes(page), before), 9000);
  await eventually(async () => assert.equal(await said(page).count(), 0));
  await press(page, "Remove First");
  await eventually(async () => assert.ok((await ofBikes(page)).every(([key]) => key.startsWith("torpor.removed."))));
  await clean(page);
});

test("in a store with hardly any room left a bike is removed and brought back, record by record", async () => {
  const page = await archived();
  const before = await ofBikes(page);
  await page.evaluate(() => {
    let filler = "";
    for (let more = 1 << 22; more >= 1; more >>= 1) {
      try {
        localStorage.setItem("x", filler + "y".repeat(more));
        filler += "y".repeat(more);
      } catch {}
    }
    localStorage.setItem("x", filler.slice(0, -80));
  });
  await press(page, "Remove First");
  await eventually(async () => {
    const all = await ofBikes(page);
    assert.deepEqual(all.map(([key, text]) => [key.replace("removed.2026-11-14.", ""), text]).sort(), before);
    assert.ok(all.every(([key]) => key.startsWith("torpor.removed.")));
  });
  await press(page, "Undo");
  await eventually(async () => assert.deepEqual(await ofBikes(page), before));
  await clean(page);
});

test("a bike that was removed in another tab and cannot be written again stays where it is", async () => {
  const context = await openContext({ locale: "en-GB" });
  const page = await first({ context });
  const other = await openPage({ context, hash: "#layup", before: at });
  for (const name of ["Garage", "Archive First", "Archived", "Remove First"]) await press(other, name);
  await page.getByRole("alert").getByText("was removed outside of this page").waitFor();
  const before = await ofBikes(page);
  assert.equal(before.length, 3);
  await fillStore(page, "all");
  await (await tank(page)).fill("17");
  await said(page).waitFor();
  assert.deepEqual(await ofBikes(page), before);
  await roomInStore(page);
  await eventually(async () => assert.equal(await said(page).count(), 0), 9000);
  await page.reload();
  await laidOut(page);
  assert.equal(await (await tank(page)).inputValue(), "17");
  await clean(other);
  await clean(page);
  await context.close();
});

for (const what of ["New bike", "Show the example", "Keep as a new bike", "Look without keeping"]) test(`"${what}" with a full store: the unsaved bike is not gone`, async () => {
  const page = await first();
  await press(page, "Link");
  const link = await page.getByLabel("Your link").inputValue();
  await press(page, "Garage");
  await fillStore(page, "all");
  await (await tank(page)).fill("16");
  await said(page).waitFor();
  if (what === "New bike" || what === "Show the example") {
    await page.getByRole("button", { name: what, exact: true }).last().click();
  } else {
    await page.evaluate((hash) => { location.hash = hash; }, link.slice(link.indexOf("#")));
    await page.getByRole("button", { name: what }).click();
    // Looked at, and nothing else comes on the sheet but what was there.
    const back = page.getByRole("button", { name: "Back to mine" });
    await back.waitFor();
    await press(page, "New bike");
    await page.getByRole("button", { name: "Show the example", exact: true }).last().click();
    await press(page, "Open First");
    await back.click();
  }
  assert.equal(await (await tank(page)).inputValue(), "16");
  await roomInStore(page);
  await eventually(async () => assert.equal(await said(page).count(), 0), 9000);
  await page.reload();
  await laidOut(page);
  assert.equal(await (await tank(page)).inputValue(), "16");
  await clean(page);
});

test("where nothing of the owner's waits, a kept bike can be opened though something failed", async () => {
  const page = await archived();
  await press(page, "Bring back First");
  await page.getByRole("button", { name: "Open First" }).waitFor();
  await fillStore(page, "all");
  await press(page, "Duplicate First");
  await said(page).waitFor();
  await press(page, "Open First");
  await eventually(async () => assert.equal(await (await tank(page)).inputValue(), "15"));
  await clean(page);
});

test("a store that is full already is said before anything is typed", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: async (page) => {
    await at(page);
    await page.addInitScript(() => { Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }; });
  } });
  await said(page).waitFor();
  await clean(page);
});

test("while a link is looked at, a backup has the owner's bike with what the full store could not take", async () => {
  const page = await first();
  await press(page, "Link");
  const link = await page.getByLabel("Your link").inputValue();
  await fillStore(page, "all");
  await (await tank(page)).fill("18");
  await page.getByRole("checkbox", { name: "Done: Cover", exact: true }).check();
  await said(page).waitFor();
  await page.evaluate((hash) => { location.hash = hash; }, link.slice(link.indexOf("#")));
  await press(page, "Look without keeping");
  await page.getByRole("button", { name: "Back to mine" }).waitFor();
  await press(page, "Backup file");
  const [file] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save a backup file", exact: true }).first().click()]);
  const { records } = JSON.parse(await readFile(await file.path(), "utf8"));
  const of = (start) => JSON.stringify(records.filter((it) => it.record.startsWith(start)));
  assert.equal(JSON.parse(of("bike."))[0].lists[0].facts.tank_volume.text, "18");
  assert.match(of("log."), /Cover/);
  await clean(page);
});
