// Seasons that are over, brought back: from a past that has moved on since, in another tab, with a full store. None is lost.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import { blank, eventually, fillStore, kept, line, press, roomInStore, tick } from "./sheet.mjs";

after(stop);

const at = (page) => page.clock.setFixedTime(new Date("2026-11-14T12:00:00"));
const book = (page) => page.getByRole("region", { name: "Logbook", exact: true });
const park = (page) => blank(line(page, "Season"), "Park date");

/** The winter of 2026 is put away, that of 2027 stands on the sheet; the logbook is open. */
async function twoSeasons(context) {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at, context });
  await press(page, "Start your own");
  await park(page).fill("2026-11-14");
  await page.getByRole("checkbox", { name: "Done: Close exhaust and intake", exact: true }).check();
  await kept(page);
  await press(page, "Begin the next season");
  await eventually(async () => assert.equal(await park(page).inputValue(), ""));
  await park(page).fill("2027-11-20");
  await kept(page);
  await press(page, "Logbook");
  return page;
}

/** The year on the sheet, and those that are over. */
const stands = (page, sheet, past) => eventually(async () => {
  assert.match(await park(page).inputValue(), new RegExp(`^${sheet}`));
  const all = await book(page).getByText(/ to no day/).allInnerTexts();
  assert.deepEqual(all.map((it) => it.match(/ (20\d\d) to/)[1]), past);
}, 5000);

const bringBack = (page) => book(page).getByRole("button", { name: "Bring back" }).click();
const again = async (page) => {
  await page.reload();
  await laidOut(page);
  await press(page, "Logbook");
};

test("the Undo of a season that was begun writes over none that stands in its place meanwhile", async () => {
  const page = await twoSeasons();
  await stands(page, "2027", ["2026"]);
  await bringBack(page);
  await stands(page, "2026", ["2027"]);
  await press(page, "Undo");
  await stands(page, "2026", ["2027"]);
  await again(page);
  await stands(page, "2026", ["2027"]);
  await bringBack(page);
  await stands(page, "2027", ["2026"]);
  await clean(page);
});

test("another tab's list of past seasons follows, and from one that does not nothing is written over", async () => {
  const context = await openContext({ locale: "en-GB" });
  const one = await twoSeasons(context);
  const other = await openPage({ context, hash: "#layup", before: at });
  await press(other, "Logbook");
  await stands(other, "2027", ["2026"]);
  await bringBack(one);
  await stands(one, "2026", ["2027"]);
  await stands(other, "2026", ["2027"]);
  // Back, without the other tab hearing of it.
  await other.evaluate(() => addEventListener("storage", (event) => event.stopImmediatePropagation(), { capture: true }));
  await bringBack(one);
  await stands(one, "2027", ["2026"]);
  await bringBack(other);
  await stands(other, "2027", ["2026"]);
  for (const page of [other, one]) {
    await again(page);
    await stands(page, "2027", ["2026"]);
  }
  await clean(other);
  await clean(one);
  await context.close();
});

test("with a full store a season that cannot be put away stays on the sheet", async () => {
  const page = await twoSeasons();
  await fillStore(page);
  await bringBack(page);
  const said = page.getByRole("alert").getByText("the browser’s store for this site is full");
  await said.waitFor();
  await stands(page, "2027", ["2026"]);
  await roomInStore(page);
  await eventually(async () => assert.equal(await said.count(), 0), 9000);
  await again(page);
  await stands(page, "2027", ["2026"]);
  await bringBack(page);
  await stands(page, "2026", ["2027"]);
  await clean(page);
});

test("a slip of the year in the park date and a tick lose no tick that was kept", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at });
  await press(page, "Start your own");
  await park(page).fill("2026-11-14");
  for (const title of ["Cover", "Wash and dry"]) await tick(page, title).check();
  await kept(page);
  await park(page).fill("2027-11-14");
  await tick(page, "Close exhaust and intake").click();
  // It holds, though the park date is a year ahead.
  await eventually(async () => assert.equal(await tick(page, "Close exhaust and intake").isChecked(), true));
  await page.getByText("the ticks so far are put away").waitFor();
  await park(page).fill("2026-11-14");
  await eventually(async () => assert.equal(await tick(page, "Close exhaust and intake").isChecked(), true));
  await kept(page);
  await again(page);
  await book(page).getByText(": 2 steps of the lay-up done").waitFor();
  await bringBack(page);
  for (const title of ["Cover", "Wash and dry"]) await eventually(async () => assert.equal(await tick(page, title).isChecked(), true));
  await book(page).getByText(": 1 step of the lay-up done").waitFor();
  await clean(page);
});

test("with a full store ticks that cannot be put away stand, and no tick takes their place", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at });
  await press(page, "Start your own");
  await park(page).fill("2026-11-14");
  await tick(page, "Cover").check();
  await park(page).fill("2027-11-14");
  await kept(page);
  await fillStore(page);
  const close = tick(page, "Close exhaust and intake");
  await close.click();
  await page.getByRole("alert").getByText("the browser’s store for this site is full").waitFor();
  await eventually(async () => assert.equal(await close.isChecked(), false));
  await roomInStore(page);
  await park(page).fill("2026-11-14");
  await eventually(async () => assert.equal(await tick(page, "Cover").isChecked(), true));
  assert.equal(await close.isChecked(), false);
  await clean(page);
});
