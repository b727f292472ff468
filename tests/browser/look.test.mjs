// What holds of the page's look: nothing sticks out or is covered, nothing moves that was not meant to, one rhythm.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, noSidewaysScroll, openContext, openPage, stop } from "./harness.mjs";
import { answers, blank, eventually, line, type, unfold } from "./sheet.mjs";

after(stop);

const METRIC = { locale: "en-GB" };
const PHONE = { ...METRIC, viewport: { width: 390, height: 844 } };

test("with letters twice as large nothing sticks out of a window of 320 px", async () => {
  const context = await openContext({ ...METRIC, viewport: { width: 320, height: 740 } });
  const large = async (page) => {
    const debug = await context.newCDPSession(page);
    await debug.send("Page.setFontSizes", { fontSizes: { standard: 32, fixed: 26 } });
  };
  const page = await openPage({ context, before: large });
  assert.equal(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize), "32px");
  await noSidewaysScroll(page);
  for (const title of ["Coolant", "Torques", "Battery"]) await unfold(page, title);
  await page.getByRole("button", { name: "Logbook", exact: true }).click();
  await page.getByLabel("Search the logbook").waitFor();
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByText("Bikes kept in this browser").waitFor();
  await noSidewaysScroll(page);
  for (const hash of ["#torque", "#battery", "#bench/layup/brakes", "#bench/layup/torques/1"]) {
    await page.evaluate((hash) => { location.hash = hash; }, hash);
    await page.locator(hash.startsWith("#bench") ? ".bench" : ".quick").waitFor();
    await noSidewaysScroll(page);
  }
  const bar = await page.locator(".bench nav").evaluate((nav) => ({
    cut: [...nav.querySelectorAll(".go")].filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.textContent),
    position: getComputedStyle(nav).position,
  }));
  assert.deepEqual(bar, { cut: [], position: "static" });
  await clean(page);
  await context.close();
});

for (const [width, height] of [[1280, 900], [390, 844]]) {
  test(`opening a line moves neither its number nor its title, ${width} px wide`, async () => {
    const page = await openPage({ ...METRIC, viewport: { width, height } });
    const battery = line(page, "Battery");
    const lefts = () => battery.evaluate((it) =>
      [".no", "h3 button"].map((part) => it.querySelector(part).getBoundingClientRect().left));
    const before = await lefts();
    await unfold(page, "Battery");
    await battery.locator(".panel").waitFor();
    assert.deepEqual(await lefts(), before);
    // What is in it stands under what is above and below it.
    const left = await battery.locator(".panel").evaluate((it) => it.getBoundingClientRect().left);
    const other = await line(page, "Oil").evaluate((it) => it.getBoundingClientRect().left);
    assert.equal(left, other);
    await clean(page);
  });
}

test("blanks and choices have one rhythm, and each label stands nearer to what is its own", async () => {
  const page = await openPage({ hash: "#layup/battery", ...PHONE });
  const battery = line(page, "Battery");
  await blank(battery, "Capacity").waitFor();
  const gaps = await battery.locator(".blanks > .blank").evaluateAll((all) =>
    all.slice(1).map((it) => {
      const label = it.querySelector("label, legend");
      const words = document.createRange();
      words.selectNodeContents(label);
      const { top, bottom } = words.getBoundingClientRect();
      const own = it.querySelector(".in, .pill").getBoundingClientRect().top;
      return { label: label.textContent, above: top - it.previousElementSibling.getBoundingClientRect().bottom, below: own - bottom };
    }),
  );
  assert.ok(gaps.some((it) => it.label === "Battery is kept") && gaps.some((it) => it.label === "Climate"));
  for (const it of gaps) {
    assert.ok(Math.abs(it.above - gaps[0].above) < 0.5, JSON.stringify([it, gaps[0]]));
    assert.ok(it.below < it.above, JSON.stringify(it));
  }
  await clean(page);
});

test("all twelve months of a year stand in sight on a phone, and a line’s end parts them as a space does", async () => {
  const page = await openPage({ hash: "#battery", ...PHONE });
  const sum = page.getByRole("main");
  const means = blank(sum, "Monthly means");
  const refused = (want) => eventually(async () => assert.equal(await means.getAttribute("aria-invalid"), want));
  await means.fill("-6 -5 0 6 13 18\n");
  await refused("true");
  await means.press("Control+End");
  await means.pressSequentially("21 20 15 9 3 -3");
  await means.press("Enter");
  await refused("false");
  await means.fill("-21 -23 -32 -13 -15 -14 -10 -18 -19 -18 -17 -27");
  const cut = await means.evaluate((it) => [it.scrollWidth - it.clientWidth, it.scrollHeight - it.clientHeight]);
  assert.deepEqual(cut, [0, 0]);
  await clean(page);
});

test("the sentence’s lines are even, and the period follows the last unit", async () => {
  const page = await openPage(PHONE);
  const { feet, gap } = await page.locator(".sentence").evaluate((it) => {
    const end = document.createRange();
    end.selectNodeContents(it.lastChild);
    return {
      feet: [...it.querySelectorAll(".in")].map((blank) => blank.getBoundingClientRect().bottom),
      gap: end.getBoundingClientRect().left - it.querySelector(".blank:last-of-type .unit:last-child").getBoundingClientRect().right,
    };
  });
  const pitch = await page.locator(".sentence").evaluate((it) => Number.parseFloat(getComputedStyle(it).lineHeight));
  for (const foot of feet) {
    const lines = (foot - feet[0]) / pitch;
    assert.ok(Math.abs(lines - Math.round(lines)) < 0.02, `${feet} of ${pitch}`);
  }
  assert.ok(gap < 2, `${gap} px`);
  await clean(page);
});

test("a quick sum says its note once, and its head leaves a phone to the blanks", async () => {
  const page = await openPage({ hash: "#battery", ...PHONE });
  const sum = page.getByRole("main");
  await type(sum, { Chemistry: ["sealed, “MF” or AGM"], Capacity: "10", "Charge when parked": "100", "Monthly means": "5" });
  const season = { "Park date": "2026-11-14", "Ride date": "2027-03-28" };
  await type(sum, season);
  await answers(sum, { "Charge on ride date": /^\d+ %/ });
  assert.equal(await sum.locator(".said").isVisible(), true);
  assert.equal(await sum.locator(".fold small.why").isVisible(), false);
  const head = await sum.locator(".fold").evaluate((it) => it.getBoundingClientRect().height);
  assert.ok(head < 844 / 5, `${head} px`);
  await clean(page);
});

test("under forced colors what needs care stands in a frame", async () => {
  const page = await openPage({ hash: "#layup/battery", ...METRIC, forcedColors: "active" });
  const frames = await page.evaluate(() =>
    [".back", ".line.open .cautions"].map((it) => getComputedStyle(document.querySelector(it)).borderTopWidth));
  assert.deepEqual(frames, ["2px", "2px"]);
  await clean(page);
});

test("the headings of the open logbook go down one level at a time", async () => {
  const page = await openPage(METRIC);
  await page.getByRole("button", { name: "Logbook", exact: true }).click();
  await page.getByRole("button", { name: "Add an entry" }).click();
  await page.locator(".logbook .rows button").first().waitFor();
  const levels = await page.locator(".logbook :is(h1, h2, h3, h4, h5, h6)").evaluateAll((all) => all.map((it) => Number(it.tagName[1])));
  assert.ok(levels.length > 1, "an entry has one");
  for (const [at, level] of levels.entries()) assert.ok(at === 0 || level <= levels[at - 1] + 1, levels.join());
  await clean(page);
});

test("what says that one’s own bike has begun goes when it is closed", async () => {
  const page = await openPage(METRIC);
  await page.getByRole("button", { name: "Start your own" }).click();
  const said = page.locator(".notice", { hasText: "Your own bike has begun" });
  await said.getByRole("button", { name: "Close" }).click();
  await said.waitFor({ state: "detached" });
  await clean(page);
});
