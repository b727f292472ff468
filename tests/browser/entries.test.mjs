// What is typed: how it is read, what it keeps, and what is said where it is not taken.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, openPage, stop } from "./harness.mjs";
import { answers, beside, blank, choice, eventually, line, type, unfold, unitOf } from "./sheet.mjs";

after(stop);

const TORQUE = "Torque at the fastener";

/** The torque quick sum with an adapter of 285 + 40 mm, which takes 285 / 325 off the figure. */
async function torque(options = { locale: "en-GB" }) {
  const page = await openPage({ hash: "#torque", ...options });
  const sum = line(page, "Torque wrench setting");
  await type(sum, { "Adapter length, drive to fastener": "40 mm", "Wrench length, hand to square drive": "285 mm" });
  return [page, sum];
}

test("a comma is a decimal point, and what can be read two ways is asked about", async () => {
  const [page, sum] = await torque();
  await type(sum, { [TORQUE]: "32,5" });
  await answers(sum, { "Exact setting": [28.5, "28.50 N·m"] });
  await type(sum, { [TORQUE]: "1,000" });
  await eventually(async () => assert.match(await beside(sum, TORQUE), /“1,000” can be read two ways: write 1000 or 1\.0/));
  await answers(sum, { "Exact setting": `needs ${TORQUE}` });
  await clean(page);
});

test("a unit in the text wins over the blank's own, and it is said how it was read", async () => {
  const [page, sum] = await torque();
  // 1 lbf·ft = 1.3558179483314 N·m exactly, so 17 are 23.0489; times 285 / 325.
  await type(sum, { [TORQUE]: "17 ft-lb" });
  await answers(sum, { "Exact setting": [17 * 1.3558179483314 * (285 / 325), "20.21 N·m"] });
  assert.match(await beside(sum, TORQUE), /read as 17 lbf·ft/);
  assert.equal(await unitOf(sum, TORQUE).textContent(), "N·m", "the blank keeps its own unit");
  await type(sum, { [TORQUE]: "22–26" });
  assert.match(await beside(sum, TORQUE), /read as 24 N·m, from 22 to 26/);
  await type(sum, { [TORQUE]: "25" });
  assert.doesNotMatch(await beside(sum, TORQUE), /read as/, "a plain number needs no echo");
  await clean(page);
});

test("the unit button changes what the number means, never the number", async () => {
  const [page, sum] = await torque();
  await type(sum, { [TORQUE]: "13" });
  await answers(sum, { "Exact setting": [11.4, "11.40 N·m"] });
  const name = await unitOf(sum, TORQUE).getAttribute("aria-label");
  assert.equal(name, "N·m, change unit");
  const seen = [];
  for (let turn = 0; turn < 8; turn += 1) {
    await unitOf(sum, TORQUE).click();
    const unit = await unitOf(sum, TORQUE).textContent();
    assert.equal(await blank(sum, TORQUE).inputValue(), "13");
    if (unit === "lbf·ft") await answers(sum, { "Exact setting": [11.4 * 1.3558179483314, "15.46 N·m"] });
    if (unit === "N·m") break;
    seen.push(unit);
  }
  assert.ok(seen.includes("lbf·ft") && seen.length >= 2, seen.join(" "));
  await answers(sum, { "Exact setting": [11.4, "11.40 N·m"] });
  await clean(page);
});

test("a text that is not taken stays, with what would be taken beside it", async () => {
  const [page, sum] = await torque();
  for (const [text, why] of [
    ["a lot", /“a lot” is not a number: write for example 25 or 25 N·m/],
    ["25 V", /“V” is not a unit for this: write .*lbf·ft/],
    ["-5", /has to be more than 0 N·m and at most 2000 N·m/],
    ["9".repeat(2000), /longer than \d+ characters: shorten it|is not a number|has to be/],
  ]) {
    await type(sum, { [TORQUE]: text });
    await eventually(async () => assert.match(await beside(sum, TORQUE), why));
    assert.equal(await blank(sum, TORQUE).inputValue(), text);
    assert.equal(await blank(sum, TORQUE).getAttribute("aria-invalid"), "true");
    await answers(sum, { "Exact setting": `needs ${TORQUE}` });
  }
  await type(sum, { [TORQUE]: "25" });
  await eventually(async () => assert.equal(await blank(sum, TORQUE).getAttribute("aria-invalid"), "false"));
  assert.doesNotMatch(await beside(sum, TORQUE), /write/);
  await clean(page);
});

test("what does not go together is said at the blank that can mend it", async () => {
  const page = await openPage({ hash: "#fuel", locale: "en-GB" });
  const fuel = line(page, "Fuel and stabilizer");
  await type(fuel, { "Tank volume": "16", "Fuel in the tank": "17" });
  await eventually(async () => assert.match(await beside(fuel, "Fuel in the tank"), /has to be at most the tank volume/));
  assert.equal(await blank(fuel, "Fuel in the tank").getAttribute("aria-invalid"), "true");
  assert.equal(await blank(fuel, "Tank volume").getAttribute("aria-invalid"), "false");
  await clean(page);
});

test("a blank is not a zero, and zero is an answer", async () => {
  const page = await openPage({ hash: "#fuel", locale: "en-GB" });
  const fuel = line(page, "Fuel and stabilizer");
  await answers(fuel, { "Stabilizer to add": "needs Tank volume, Fuel in the tank, Stabilizer label" });
  await type(fuel, { "Tank volume": "16", "Fill to": "100", "Stabilizer label": "1:320" });
  await answers(fuel, { "Stabilizer to add": "needs Fuel in the tank", "Fuel to add": "—" });
  await type(fuel, { "Fuel in the tank": "0" });
  await answers(fuel, { "Stabilizer to add": [50, "50 mL"], "Fuel to add": [16, "16.0 L"] });
  await type(fuel, { "Fuel in the tank": "16", "Already treated": "100" });
  await answers(fuel, { "Stabilizer to add": [0, "0.0 mL"], "Fuel to add": [0, "0.0 L"] });
  await type(fuel, { "Fuel in the tank": "   " });
  await answers(fuel, { "Stabilizer to add": "needs Fuel in the tank" });
  await clean(page);
});

test("a gallon is the American one, and that is said", async () => {
  const page = await openPage({ hash: "#fuel", locale: "en-GB" });
  const fuel = line(page, "Fuel and stabilizer");
  // 231 in³ = 3.785411784 L; 95 % of it, common practice where nothing is typed.
  await type(fuel, { "Tank volume": "4 gal", "Fuel in the tank": "0" });
  await answers(fuel, { "Fuel to add": [4 * 3.785411784 * 0.95, "14.4 L"] });
  assert.match(await beside(fuel, "Tank volume"), /read as 4 US gal; if you mean the other one, write imp gal/);
  await type(fuel, { "Tank volume": "4 imp gal" });
  await answers(fuel, { "Fuel to add": [4 * 4.54609 * 0.95, "17.3 L"] });
  await clean(page);
});

test("a dose is said back as a ratio", async () => {
  const page = await openPage({ hash: "#fuel", locale: "en-GB" });
  const fuel = line(page, "Fuel and stabilizer");
  for (const [text, echo] of [
    ["30 mL per 10 L", /read as 30 mL per 10 L, 1 to 333\.3/],
    ["1 fl oz per 2.5 gal", /read as 1 US fl oz per 2\.5 US gal, 1 to 320; US or British: see Label’s measures/],
    ["1:320", /read as 1 to 320/],
    ["a splash", /“a splash” is not a dose: write for example 30 mL per 10 L/],
  ]) {
    await type(fuel, { "Stabilizer label": text });
    await eventually(async () => assert.match(await beside(fuel, "Stabilizer label"), echo));
  }
  await clean(page);
});

test("days are read, said back, and asked about where month and day may be turned round", async () => {
  const page = await openPage({ locale: "en-GB" });
  const season = line(page, "Season");
  await type(season, { "Park date": "2025-11-01", "Ride date": "Mar 15 2026" });
  await answers(season, { "Days stored": "134 days" });
  await season.getByText("Sat, Nov 1 2025 to Sun, Mar 15 2026").waitFor();
  await type(season, { "Park date": "3/4/2026" });
  await eventually(async () => assert.match(await beside(season, "Park date"), /can be read two ways/));
  assert.equal(await blank(season, "Park date").inputValue(), "3/4/2026");
  await type(season, { "Park date": "Feb 30 2026" });
  await eventually(async () => assert.match(await beside(season, "Park date"), /is not a day/));
  await type(season, { "Park date": "2026-04-01" });
  await season.getByText("ride date has to be the park date or a later day").first().waitFor();
  await clean(page);
});

test("a day is picked in the browser's own calendar, which opens at the day that is typed", async () => {
  const page = await openPage({ locale: "en-GB" });
  const season = line(page, "Season");
  await type(season, { "Park date": "14 Nov 2026" });
  await page.evaluate(() => {
    const show = HTMLInputElement.prototype.showPicker;
    HTMLInputElement.prototype.showPicker = function () {
      show.call(this);
      window.opened = [this.type, this.value, this.matches(":open")];
      this.value = "2026-11-21";
      this.dispatchEvent(new Event("change", { bubbles: true }));
    };
  });
  await season.getByRole("button", { name: "Pick a day: Park date" }).click();
  assert.deepEqual(await page.evaluate(() => window.opened), ["date", "2026-11-14", true]);
  await eventually(async () => assert.equal(await blank(season, "Park date").inputValue(), "Nov 21 2026"));
  await clean(page);
});

test("the sign button turns the sign of a temperature", async () => {
  const page = await openPage({ locale: "en-GB" });
  const season = line(page, "Season");
  const night = blank(season, "Coldest night");
  await night.fill("12");
  const sign = night.locator("xpath=..").getByRole("button", { name: "Change sign" });
  await sign.click();
  assert.equal(await night.inputValue(), "−12");
  await sign.click();
  assert.equal(await night.inputValue(), "12");
  await clean(page);
});

test("a folded line that lacks a fact has its blank in the row, which stays while it is typed in", async () => {
  const page = await openPage({ locale: "en-GB" });
  await page.getByRole("button", { name: "Start your own" }).click();
  const fuel = line(page, "Fill up and stabilize");
  await fuel.getByText("needed for the answer, and 2 more").waitFor();
  for (const [label, text] of [["Tank volume", "16"], ["Fuel in the tank", "16"], ["Stabilizer label", "1:320"]]) {
    await blank(fuel, label).pressSequentially(text);
    assert.equal(await blank(fuel, label).inputValue(), text);
    if (label === "Stabilizer label") await fuel.getByText("Stabilizer to add 50 mL").waitFor();
    // Another line's button, so that the row is left.
    await page.getByRole("button", { name: "Oil", exact: true }).focus();
  }
  await answers(fuel, { "Stabilizer to add": [50, "50 mL"] });
  await clean(page);
});

test("a blank that a line shows because its fact was lacking stays while it is typed in", async () => {
  const page = await openPage({ hash: "#layup/battery", locale: "en-GB" });
  await page.getByRole("button", { name: "Start your own" }).click();
  const battery = await unfold(page, "Battery");
  await blank(battery, "Park date").pressSequentially("2026-11-14");
  assert.equal(await blank(battery, "Park date").inputValue(), "2026-11-14");
  assert.equal(await blank(line(page, "Season"), "Park date").inputValue(), "2026-11-14", "one fact, stated once");
  await clean(page);
});

test("a press below a blank just left meets what it aimed at", async () => {
  const [page, sum] = await torque();
  // Its hint goes when the blank is left; what is pressed must not move away under the press.
  await blank(sum, TORQUE).fill("25");
  const target = choice(sum, "Adapter", "pointing back");
  const { x, y, width, height } = await target.boundingBox();
  await page.mouse.move(x + width / 2, y + height / 2);
  await page.mouse.down();
  await page.waitForTimeout(120);
  await page.mouse.up();
  assert.equal(await target.isChecked(), true);
  await clean(page);
});
