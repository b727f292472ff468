// The season line and the battery's own entries, as they are used: pointed at, moved with the keys, a draw that was found
// is kept. The figures themselves are held to their sources by the native tests.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, openPage, stop } from "./harness.mjs";
import { answers, blank, choice, eventually, line, shown, type, unfold } from "./sheet.mjs";

after(stop);

const figure = (page) => page.getByRole("figure", { name: "Season line" });
const inAutumn = (page) => page.clock.setFixedTime(new Date("2026-10-01T12:00:00"));
const told = async (page) => (await figure(page).locator("p.said").textContent()).replaceAll("\u00a0", " ");

test("any day of the season is read by pointing, tapping and the arrow keys", async () => {
  for (const [width, drawn] of [[1280, ".wide"], [390, ".narrow"]]) {
    const page = await openPage({ locale: "en-GB", viewport: { width, height: 844 }, before: inAutumn });
    const picture = figure(page).locator(drawn);
    assert.match(await told(page), /^Tap the picture/);
    const { width: across } = await picture.boundingBox();
    await picture.hover({ position: { x: across / 2, y: 40 } });
    // The example is parked for 134 days, Nov 14 to Mar 28: half of them later it is Jan 20.
    await eventually(async () => assert.match(await told(page), /^Wed, Jan 20, day 67 of 134 · if charged as planned: charge \d+–\d+\s%, most likely \d+\s% · rests at 1\d\.\d\d V to 1\d\.\d\d V · −\d+ °C/));
    const slider = page.getByRole("slider", { name: "Day of the season" });
    assert.equal(await slider.inputValue(), "67");
    await slider.press("ArrowRight");
    await eventually(async () => assert.match(await told(page), /^Thu, Jan 21, day 68 of 134/));
    assert.equal((await slider.getAttribute("aria-valuetext")).replaceAll("\u00a0", " "), await told(page));
    await slider.press("Home");
    await eventually(async () => assert.match(await told(page), /^Sat, Nov 14, day 0 of 134/));
    await slider.press("End");
    await eventually(async () => assert.match(await told(page), /^Sun, Mar 28, day 134 of 134/));
    await clean(page);
  }
});

test("a season says how long it is in weeks and months, and draws the charge anew after a charge", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup/battery", before: (page) => page.clock.setFixedTime(new Date("2027-01-20T12:00:00")) });
  // On a day of the season the line reads that day at once.
  assert.match(await told(page), /^Wed, Jan 20, day 67 of 134/);
  await page.getByRole("button", { name: "Start your own" }).click();
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("2026-11-14");
  await blank(season, "Ride date").fill("2027-03-28");
  await season.getByText("19 weeks 1 day · 4 months 14 days").waitFor();
  await type(line(page, "Battery"), { Chemistry: ["gel"], Capacity: "12", "Key-off draw": "1", "Monthly means": "8" });
  const band = figure(page).locator(".wide .typical");
  const before = await band.getAttribute("d");
  await blank(line(page, "Battery"), "Key-off draw").fill("8");
  await eventually(async () => assert.notEqual(await band.getAttribute("d"), before));
  await clean(page);
});

test("two readings give the draw, and it is kept as a fact when the owner says so", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup/battery" });
  await page.getByRole("button", { name: "Start your own" }).click();
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("2026-11-03");
  await blank(season, "Ride date").fill("2027-03-20");
  await season.getByLabel("Where it stands").selectOption("heated");
  const battery = await unfold(page, "Battery");
  await type(battery, { Chemistry: ["sealed, “MF” or AGM"], Capacity: "10", "Resting voltage": "12.72", "Monthly means": "15" });
  await battery.getByRole("button", { name: "More about it" }).click();
  await type(battery, { "Meter reads": "12.58", "Read on": "2026-11-24" });
  const keep = battery.getByRole("button", { name: /^Keep .* mA/ });
  await keep.waitFor();
  const offered = (await keep.textContent()).replaceAll("\u00a0", " ").match(/\d[^m]*(?= mA)/)[0].trim();
  await keep.click();
  await eventually(async () => assert.equal(await blank(battery, "Key-off draw").inputValue(), offered));
  await clean(page);
});

test("a climate is chosen from a list, and taken back", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup/battery" });
  await page.getByRole("button", { name: "Start your own" }).click();
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("2026-11-14");
  await blank(season, "Ride date").fill("2027-03-28");
  await season.getByLabel("Where it stands").selectOption("outdoors");
  const battery = await unfold(page, "Battery");
  await type(battery, { Chemistry: ["conventional, filler caps"], Capacity: "12" });
  const climate = battery.getByLabel("Climate");
  await climate.selectOption("winnipeg_mb");
  await answers(battery, { "Charge on ride date": /^\d+ %/ });
  // It brings a coldest night of its own, as an answer with its working.
  await answers(battery, { "Coldest night counted": /^−\d+ °C/ });
  await climate.selectOption("");
  await eventually(async () => assert.match(await shown(battery, "Charge on ride date"), /^needs/));
  await clean(page);
});

test("a choice of few stays in sight", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#battery" });
  const sum = page.getByRole("main");
  await choice(sum, "Chemistry", "LiFePO4").check();
  assert.equal(await sum.getByRole("radio", { name: "gel" }).isVisible(), true);
  await clean(page);
});
