// Two tabs of one person, and two bikes of one browser: what one writes the other takes in, and neither writes over the other.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import { blank, eventually, kept, line, unfold } from "./sheet.mjs";

after(stop);

const at = (page) => page.clock.setFixedTime(new Date("2026-11-14T12:00:00"));
const tick = (page, title) => page.getByRole("checkbox", { name: `Done: ${title}`, exact: true });
const book = (page) => page.getByRole("region", { name: "Logbook", exact: true });
const openBook = (page) => page.getByRole("button", { name: "Logbook", exact: true }).click();
const titles = async (page) => (await book(page).locator(".rows > li h5 button").allInnerTexts()).map((it) => it.replace(/^[▸▾]\s*/, "").split(" · ")[1]).sort();
const are = (page, want) => eventually(async () => assert.deepEqual(await titles(page), want), 5000);

test("what two tabs change of one bike at once is all kept, facts and logbook", async () => {
  const context = await openContext({ locale: "en-GB" });
  const one = await openPage({ context, hash: "#layup", before: at });
  await one.getByRole("button", { name: "Start your own" }).click();
  await blank(line(one, "Season"), "Park date").fill("2026-11-14");
  await tick(one, "Wash and dry").check();
  await kept(one);
  const other = await openPage({ context, hash: "#layup", before: at });
  await openBook(other);
  await are(other, ["Wash and dry"]);
  // Within the pause before either is kept.
  const fuel = await unfold(one, "Fill up and stabilize");
  const battery = await unfold(other, "Battery");
  await Promise.all([blank(fuel, "Tank volume").fill("15"), blank(battery, "Capacity").fill("12")]);
  await tick(one, "Chain").check();
  // A person is not in two tabs at once, but may be before the first has written.
  await other.waitForTimeout(150);
  await tick(other, "Cover").check();
  await kept(one);
  await kept(other);
  // Each has the other's without a reload.
  await eventually(async () => assert.equal(await blank(await unfold(other, "Fill up and stabilize"), "Tank volume").inputValue(), "15"), 5000);
  await eventually(async () => assert.equal(await blank(await unfold(one, "Battery"), "Capacity").inputValue(), "12"), 5000);
  for (const page of [one, other]) {
    await page.reload();
    await laidOut(page);
    await openBook(page);
    await are(page, ["Chain", "Cover", "Wash and dry"]);
    assert.equal(await blank(await unfold(page, "Battery"), "Capacity").inputValue(), "12");
    assert.equal(await blank(await unfold(page, "Fill up and stabilize"), "Tank volume").inputValue(), "15");
  }
  await clean(other);
  await clean(one);
  await context.close();
});

test("with the logbook open another bike shows its own entries, and typing there goes to them", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at });
  await page.getByRole("button", { name: "Start your own" }).click();
  await tick(page, "Wash and dry").check();
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByLabel("Bike", { exact: true }).fill("First");
  await page.getByRole("button", { name: "New bike" }).click();
  await page.getByLabel("Bike", { exact: true }).fill("Second");
  await tick(page, "Chain").check();
  await openBook(page);
  await are(page, ["Chain"]);
  await book(page).getByRole("button", { name: /Chain$/ }).click();
  await kept(page);
  await page.getByRole("button", { name: "Open First" }).click();
  await are(page, ["Wash and dry"]);
  assert.equal(await book(page).getByLabel("Remarks").count(), 0, "nothing of the other bike's stands open");
  await book(page).getByRole("button", { name: /Wash and dry$/ }).click();
  await book(page).getByLabel("Remarks").fill("blue soap");
  await kept(page);
  await page.getByRole("button", { name: "Open Second" }).click();
  await are(page, ["Chain"]);
  assert.equal(await book(page).getByText("blue soap").count(), 0);
  await page.getByRole("button", { name: "Open First" }).click();
  await book(page).getByText("blue soap").waitFor();
  await clean(page);
});

test("what could not be kept is kept before another bike is laid", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at });
  await page.getByRole("button", { name: "Start your own" }).click();
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByLabel("Bike", { exact: true }).fill("First");
  await kept(page);
  await page.evaluate(() => {
    window.realSet = Storage.prototype.setItem;
    Storage.prototype.setItem = function refuse() { throw new DOMException("full", "QuotaExceededError"); };
  });
  await tick(page, "Chain").check();
  await page.getByText("the browser's store for this site is full").waitFor();
  await page.evaluate(() => { Storage.prototype.setItem = window.realSet; });
  await page.getByRole("button", { name: "New bike" }).click();
  await page.getByLabel("Bike", { exact: true }).fill("Second");
  await kept(page);
  await page.getByRole("button", { name: "Open First" }).click();
  await eventually(async () => assert.equal(await tick(page, "Chain").isChecked(), true));
  await openBook(page);
  await are(page, ["Chain"]);
  await clean(page);
});

test("dates moved on to the next winter open every step again; the season that was put away comes back", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at });
  await page.getByRole("button", { name: "Start your own" }).click();
  const park = blank(line(page, "Season"), "Park date");
  await park.fill("2026-11-14");
  await tick(page, "Close exhaust and intake").check();
  await park.fill("2027-11-14");
  await eventually(async () => assert.equal(await tick(page, "Close exhaust and intake").isChecked(), false));
  await park.fill("2026-11-14");
  await eventually(async () => assert.equal(await tick(page, "Close exhaust and intake").isChecked(), true));
  await page.getByRole("button", { name: "Begin the next season" }).click();
  await eventually(async () => assert.equal(await park.inputValue(), ""));
  await park.fill("2027-11-20");
  // Taking it back loses nothing of the new one: it stands among the past seasons.
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await eventually(async () => assert.equal(await park.inputValue(), "2026-11-14"));
  await openBook(page);
  await book(page).getByText(/^Sat, Nov 20 2027 to no day/).waitFor();
  await book(page).getByRole("button", { name: "Bring back" }).click();
  await eventually(async () => assert.equal(await park.inputValue(), "2027-11-20"));
  await book(page).getByText(/^Sat, Nov 14 2026 to no day: 1 step of the lay-up/).waitFor();
  await kept(page);
  await page.reload();
  await laidOut(page);
  assert.equal(await park.inputValue(), "2027-11-20");
  await clean(page);
});
