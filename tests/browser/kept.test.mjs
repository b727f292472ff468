// What is kept in the browser, and how it survives: a reload, a damaged record, a full or a blocked store.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import {
  allAnswers, allEntries, answers, beside, blank, eventually, kept, line, press, stored, type, unfold, unitOf,
} from "./sheet.mjs";

after(stop);

const METRIC = { locale: "en-GB" };
const TORQUE = "Torque at the fastener";
const FASTENER = {
  Adapter: ["in line"], [TORQUE]: "25", "Adapter length, drive to fastener": "40",
  "Wrench length, hand to square drive": "285", Fastener: "Header nut",
};

async function ownBike(hash = "", options = METRIC) {
  const page = await openPage({ hash, ...options });
  await page.getByRole("button", { name: "Start your own" }).click();
  await page.getByRole("heading", { name: "Your bike", exact: true }).waitFor();
  return page;
}

async function reload(page) {
  await page.reload();
  await laidOut(page);
}

test("typing over the example starts a blank bike of one's own, and nothing of the example is in it", async () => {
  const page = await openPage({ hash: "#layup/fuel", ...METRIC });
  const fuel = line(page, "Fill up and stabilize");
  await page.getByText("Had a bike here?").waitFor();
  await answers(fuel, { "Stabilizer to add": /mL$/ });
  assert.deepEqual(await stored(page), {}, "the example is not kept");
  await blank(fuel, "Tank volume").fill("19");
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "19");
  await page.getByRole("heading", { name: "Your bike", exact: true }).waitFor();
  assert.equal(await page.getByText("Example", { exact: true }).count(), 0);
  assert.equal(await page.getByText("Alder 640").count(), 0);
  for (const title of ["Last run", "Oil", "Torques", "Battery"]) await unfold(page, title);
  const filled = (await allEntries(page)).filter((it) => !it.startsWith("unit of ") && !/: (|false)$/.test(it));
  assert.deepEqual(filled, ["line-fuel-tank_volume: 19"]);
  assert.equal(await page.locator("output data").count(), 0, "no answer from the example’s figures");
  await clean(page);
});

test("a reload keeps texts, units and answers, and texts that cannot be read", async () => {
  const page = await ownBike("#layup/fuel");
  await type(line(page, "Fill up and stabilize"), {
    "Tank volume": "16,0", "Fuel in the tank": "1 gal", "Stabilizer label": "1 fl oz per 2.5 gal", "Fill to": "brimful",
  });
  await unitOf(line(page, "Fill up and stabilize"), "Tank volume").click();
  await type(await unfold(page, "Torques"), FASTENER);
  await type(line(page, "Season"), { "Park date": "Nov 31" });
  await eventually(async () => assert.match(await beside(line(page, "Fill up and stabilize"), "Fill to"), /is not a number/));
  await kept(page);
  const [texts, results] = [await allEntries(page), await allAnswers(page)];
  assert.ok(texts.some((it) => it.endsWith(": brimful")) && texts.some((it) => it.endsWith(": Nov 31")));
  await reload(page);
  await unfold(page, "Fill up and stabilize");
  await unfold(page, "Torques");
  assert.deepEqual((await allEntries(page)).toSorted(), texts.toSorted());
  assert.deepEqual(await allAnswers(page), results);
  assert.match(await beside(line(page, "Fill up and stabilize"), "Fill to"), /“brimful” is not a number/);
  await clean(page);
});

test("what was typed is kept without a further act, soon after", async () => {
  const page = await ownBike("#layup/fuel");
  await type(line(page, "Fill up and stabilize"), { "Tank volume": "16" });
  await eventually(async () => assert.ok(Object.keys(await stored(page)).some((it) => it.startsWith("torpor.bike."))));
  await clean(page);
});

test("a fastener is kept, listed, opened, removed and taken back", async () => {
  const page = await ownBike("#layup/torques");
  const torques = line(page, "Torques");
  for (const [name, figure] of [["Header nut", "25"], ["Axle nut", "88"]]) {
    await type(torques, { ...FASTENER, Fastener: name, [TORQUE]: figure });
    await torques.getByRole("button", { name: "Keep this fastener" }).click();
    assert.equal(await blank(torques, TORQUE).inputValue(), "", "its blanks are free for the next");
  }
  const rows = () => line(page, "Torque list").getByRole("listitem").getByRole("heading").allTextContents();
  const names = async () => (await rows()).map((it) => it.replace(/^[▸▾]/u, ""));
  assert.deepEqual(await names(), ["Header nut", "Axle nut"]);
  const header = line(page, "Header nut");
  await answers(header, { "Exact setting": [21.923076923076923, "21.92 N·m"] });
  await answers(line(page, "Axle nut"), { "Exact setting": [88 * (285 / 325), "77.17 N·m"] });
  await header.getByRole("button", { name: "Header nut", exact: true }).click();
  await type(header, { [TORQUE]: "26" });
  await answers(header, { "Exact setting": [22.8, "22.80 N·m"] });
  await kept(page);
  await reload(page);
  assert.deepEqual(await names(), ["Header nut", "Axle nut"]);
  await answers(line(page, "Header nut"), { "Exact setting": [22.8, "22.80 N·m"] });
  await page.getByRole("button", { name: "Header nut", exact: true }).click();
  await page.getByRole("button", { name: "Remove Header nut" }).click();
  assert.deepEqual(await names(), ["Axle nut"]);
  await page.getByText("Header nut is removed.").waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  assert.deepEqual(await names(), ["Header nut", "Axle nut"], "in its old place");
  await answers(line(page, "Header nut"), { "Exact setting": [22.8, "22.80 N·m"] });
  await page.getByRole("button", { name: "Axle nut", exact: true }).click();
  await page.getByRole("button", { name: "Remove Axle nut" }).click();
  await kept(page);
  await reload(page);
  assert.deepEqual(await names(), ["Header nut"]);
  await clean(page);
});

test("several bikes stand in one garage and do not mix", async () => {
  const page = await ownBike("#layup/fuel");
  const fuel = line(page, "Fill up and stabilize");
  const garage = page.getByRole("button", { name: "Garage", exact: true });
  await garage.click();
  await page.getByLabel("Bike", { exact: true }).fill("Rowan");
  await type(fuel, { "Tank volume": "16", "Stabilizer label": "1:320" });
  await kept(page);
  await page.getByRole("button", { name: "New bike" }).click();
  await page.getByRole("heading", { name: "Your bike", exact: true }).waitFor();
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "", "the bike’s own");
  assert.equal(await blank(fuel, "Stabilizer label").inputValue(), "1:320", "the garage’s");
  await page.getByLabel("Bike", { exact: true }).fill("Hazel");
  await type(fuel, { "Tank volume": "11" });
  await eventually(async () => {
    const keys = Object.keys(await stored(page));
    assert.equal(keys.filter((it) => it.startsWith("torpor.bike.")).length, 2);
  });
  await kept(page);
  await reload(page);
  await page.getByRole("heading", { name: "Hazel" }).waitFor();
  await garage.click();
  await page.getByRole("button", { name: "Open Rowan" }).click();
  await page.getByRole("heading", { name: "Rowan" }).waitFor();
  await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "16");
  await page.getByRole("button", { name: "Open Hazel" }).click();
  await page.getByRole("heading", { name: "Hazel" }).waitFor();
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "11");
  await clean(page);
});

test("another unit set changes the units of answers and of fresh blanks, and nothing that was typed", async () => {
  const page = await ownBike("#layup/fuel");
  const fuel = line(page, "Fill up and stabilize");
  await type(fuel, { "Tank volume": "15", "Fuel in the tank": "3", "Fill to": "100", "Stabilizer label": "1:320" });
  await answers(fuel, { "Fuel to add": [12, "12.0 L"] });
  await kept(page);
  const before = await stored(page);
  await page.getByRole("button", { name: "Units: metric" }).click();
  await answers(fuel, { "Fuel to add": [12 / 3.785411784, "3.17 US gal"] });
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "15");
  assert.equal(await unitOf(fuel, "Tank volume").textContent(), "L");
  // Its unit stays its own while it is typed over: 15 L again, not 15 gal.
  await type(fuel, { "Tank volume": "15.0" });
  assert.equal(await unitOf(fuel, "Tank volume").textContent(), "L");
  await answers(fuel, { "Fuel to add": [12 / 3.785411784, "3.17 US gal"] });
  await type(fuel, { "Tank volume": "15" });
  const oil = await unfold(page, "Oil");
  assert.equal(await unitOf(oil, "Fill with filter").textContent(), "US qt", "a fresh blank follows");
  await kept(page);
  const since = await stored(page);
  const [bike, season] = ["torpor.bike.", "torpor.season."].map((start) => Object.keys(before).find((it) => it.startsWith(start)));
  // Their revision may have grown; what is kept is the same when the set is turned back.
  await page.getByRole("button", { name: "Units: US" }).click();
  await answers(fuel, { "Fuel to add": [12, "12.0 L"] });
  await reload(page);
  await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "15");
  assert.equal(await unitOf(fuel, "Tank volume").textContent(), "L");
  assert.equal(since[bike].length, before[bike].length);
  assert.equal(since[season].length, before[season].length);
  await clean(page);
});

for (const [name, spoil, words, aside] of [
  ["damaged", (text) => `${text.slice(0, -6)}AAAAAA`, /is damaged; it is set aside unchanged/, true],
  ["newer", (text) => text.replace(/^1\./, "7."), /was written by a newer Torpor \(form 7/, false],
]) {
  test(`a ${name} record is said and not written over`, async () => {
    const context = await openContext(METRIC);
    const first = await openPage({ context, hash: "#layup/fuel" });
    await first.getByRole("button", { name: "Start your own" }).click();
    await type(line(first, "Fill up and stabilize"), { "Tank volume": "16" });
    await kept(first);
    const key = Object.keys(await stored(first)).find((it) => it.startsWith("torpor.bike."));
    await first.goto("about:blank");
    const page = await openPage({ context, hash: "#layup/fuel", before: (page) => page.route("**/boot.js*", (route) => route.abort()), ready: false });
    const spoiled = spoil((await stored(page))[key]);
    await page.evaluate(([key, text]) => localStorage.setItem(key, text), [key, spoiled]);
    await page.unroute("**/boot.js*");
    await reload(page);
    await page.getByText(words).waitFor();
    await type(line(page, "Fill up and stabilize"), { "Tank volume": "17" });
    await page.waitForTimeout(600);
    await page.evaluate(() => dispatchEvent(new Event("pagehide")));
    const left = Object.values(await stored(page)).filter((it) => it === spoiled);
    assert.equal(left.length, 1, "it is there as it was");
    if (aside) assert.ok(Object.keys(await stored(page)).some((it) => it.startsWith("torpor.damaged.")));
    else assert.equal((await stored(page))[key], spoiled);
    assert.equal(await blank(line(page, "Fill up and stabilize"), "Tank volume").inputValue(), "17");
    await context.close();
  });
}

test("where the browser keeps nothing the page says so and works", async () => {
  const page = await openPage({ hash: "#layup/fuel", blockStorage: true, ...METRIC });
  await page.getByRole("alert").getByText("Nothing is kept here now").waitFor();
  const fuel = line(page, "Fill up and stabilize");
  await type(fuel, { "Tank volume": "15", "Fuel in the tank": "3", "Fill to": "100", "Stabilizer label": "1:320" });
  await answers(fuel, { "Stabilizer to add": [46.875, "47 mL"] });
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByRole("button", { name: "Link", exact: true }).click();
  assert.match(await page.getByLabel("Your link").inputValue(), /#1\..{20}/);
  await clean(page);
});

test("where the store is full the page says so, keeps what is typed on the sheet, and says when there is room again", async () => {
  const page = await ownBike("#layup/fuel");
  const fuel = line(page, "Fill up and stabilize");
  await fill(page);
  await type(fuel, { "Tank volume": "15", "Fuel in the tank": "3", "Fill to": "100", "Stabilizer label": "1:320" });
  await page.getByRole("alert").getByText("the browser’s store for this site is full").waitFor();
  await answers(fuel, { "Stabilizer to add": [46.875, "47 mL"] });
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "15");
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith("neighbor.")) localStorage.removeItem(key);
  });
  await type(fuel, { "Tank volume": "15.5" });
  await eventually(async () => assert.equal(await page.getByText("store for this site is full").count(), 0));
  await reload(page);
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "15.5");
  await clean(page);
});

const garage = (page) => page.getByRole("button", { name: "Garage", exact: true });
const bikes = (page) => page.locator(".drawer > ul > li");
const names = async (page) => (await bikes(page).evaluateAll((all) => all.map((it) => it.querySelector("span").textContent))).toSorted();
const inList = (page, want) => eventually(async () => assert.deepEqual(await names(page), want));
const archive = (page) => page.getByRole("button", { name: "Archived", exact: true });
const away = (page, name) => page.locator(".drawer > div ul > li").filter({ hasText: name });

/** A bike with a name, a figure, a fastener and a tick. */
async function rowan(options) {
  const page = await ownBike("#layup/torques", options);
  const torques = line(page, "Torques");
  await type(torques, FASTENER);
  await torques.getByRole("button", { name: "Keep this fastener" }).click();
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "16", "Fuel in the tank": "4" });
  await page.getByRole("checkbox", { name: "Done: Wash and dry" }).check();
  await garage(page).click();
  await page.getByLabel("Bike", { exact: true }).fill("Rowan");
  await kept(page);
  return page;
}

/** Fills the store to the last unit, with ever smaller pieces until none fits. */
const fill = (page) =>
  page.evaluate(() => {
    let piece = "x".repeat(1 << 20);
    for (let at = 0; piece; at += 1) {
      try {
        localStorage.setItem(`neighbor.${at}`, piece);
      } catch {
        piece = piece.slice(piece.length - (piece.length >> 1));
        if (piece.length === 1) piece = "";
      }
    }
  });

test("a duplicate has the facts and the fasteners, and a season of its own", async () => {
  const page = await rowan();
  await inList(page, ["Rowan"]);
  assert.equal(await bikes(page).first().getAttribute("aria-current"), "true");
  await press(page, "Duplicate Rowan");
  await inList(page, ["Rowan", "Rowan, copy"]);
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  await press(page, "Open Rowan, copy");
  await page.getByRole("heading", { name: "Rowan, copy", exact: true }).waitFor();
  await unfold(page, "Torques");
  await answers(line(page, "Header nut"), { "Exact setting": [21.923076923076923, "21.92 N·m"] });
  const fuel = await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "16");
  assert.equal(await blank(fuel, "Fuel in the tank").inputValue(), "", "of this season");
  assert.equal(await page.getByRole("checkbox", { name: "Done: Wash and dry" }).isChecked(), false);
  await blank(fuel, "Tank volume").fill("17");
  await press(page, "Open Rowan");
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(fuel, "Tank volume").inputValue(), "16", "they do not mix");
  await clean(page);
});

test("an archived bike leaves the list and is brought back", async () => {
  const page = await rowan();
  assert.equal(await archive(page).count(), 0);
  await press(page, "Archive Rowan");
  await page.getByText("Had a bike here?").waitFor();
  await page.getByText("None yet: the first blank you fill in starts yours.").waitFor();
  assert.equal(await page.getByRole("button", { name: "Open Rowan" }).count(), 0);
  await reload(page);
  await page.getByText("Had a bike here?").waitFor();
  await garage(page).click();
  await archive(page).click();
  await away(page, "Rowan").waitFor();
  await press(page, "Bring back Rowan");
  await press(page, "Open Rowan");
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  assert.equal(await page.getByRole("checkbox", { name: "Done: Wash and dry" }).isChecked(), true, "with its season");
  await eventually(async () => assert.equal(await archive(page).count(), 0));
  await clean(page);
});

test("archiving the open one lays another one on the sheet", async () => {
  const page = await rowan();
  await press(page, "Duplicate Rowan");
  await press(page, "Archive Rowan");
  await page.getByRole("heading", { name: "Rowan, copy", exact: true }).waitFor();
  await inList(page, ["Rowan, copy"]);
  await reload(page);
  await page.getByRole("heading", { name: "Rowan, copy", exact: true }).waitFor();
  await clean(page);
});

test("removing is for archived ones, is taken back at once, and later from the archive", async () => {
  const page = await rowan();
  assert.equal(await page.getByRole("button", { name: "Remove Rowan" }).count(), 0);
  await press(page, "Archive Rowan");
  const before = await stored(page);
  await archive(page).click();
  await press(page, "Remove Rowan");
  await page.getByText("Rowan is removed.").waitFor();
  const since = Object.keys(await stored(page));
  const own = (keys) => keys.filter((it) => /^torpor\.(bike|season|log|past|calendar)\./.test(it));
  assert.deepEqual(own(since), []);
  const all = own(Object.keys(before));
  assert.ok(all.length > 2, "the bike’s, its season’s, its logbook’s");
  assert.deepEqual(
    since.filter((it) => it.startsWith("torpor.removed.")).map((it) => it.replace(/removed\.[\d-]+\./, "")).toSorted(),
    all.toSorted(),
  );
  await press(page, "Undo");
  await page.getByRole("button", { name: "Remove Rowan" }).waitFor();
  assert.deepEqual(await stored(page), before, "as if nothing had been");
  await press(page, "Remove Rowan");
  await reload(page);
  await garage(page).click();
  await archive(page).click();
  await away(page, "Rowan").getByText(/can be brought back until/).waitFor();
  await press(page, "Bring back Rowan");
  await press(page, "Open Rowan");
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  assert.equal(await page.getByRole("checkbox", { name: "Done: Wash and dry" }).isChecked(), true);
  await unfold(page, "Torques");
  await answers(line(page, "Header nut"), { "Exact setting": [21.923076923076923, "21.92 N·m"] });
  assert.ok(!Object.keys(await stored(page)).some((it) => it.startsWith("torpor.removed.")));
  await clean(page);
});

test("what was removed is there for thirty days, and then swept", async () => {
  const context = await openContext(METRIC);
  const on = (time) => (page) => page.clock.setFixedTime(new Date(time));
  const open = (time) => openPage({ context, hash: "#layup", before: on(time) });
  const first = await open("2026-11-30T12:00:00");
  await press(first, "Start your own");
  await garage(first).click();
  await first.getByLabel("Bike", { exact: true }).fill("Rowan");
  await kept(first);
  await press(first, "Archive Rowan");
  await archive(first).click();
  await press(first, "Remove Rowan");
  await first.close();
  // The last day of thirty, and the one after it.
  for (const [time, there] of [["2026-12-30T12:00:00", 2], ["2026-12-31T12:00:00", 0]]) {
    const page = await open(time);
    const keys = Object.keys(await stored(page)).filter((it) => it.startsWith("torpor.removed."));
    assert.equal(keys.length, there, time);
    await page.close();
  }
  await context.close();
});

test("with a full store nothing is lost: a copy is refused, and what is removed makes room for itself", async () => {
  const page = await rowan();
  await press(page, "Duplicate Rowan");
  await inList(page, ["Rowan", "Rowan, copy"]);
  await press(page, "Archive Rowan");
  await inList(page, ["Rowan, copy"]);
  await kept(page);
  await page.waitForTimeout(600);
  await fill(page);
  const before = await stored(page);
  await press(page, "Duplicate Rowan, copy");
  await page.getByRole("alert").getByText("the browser’s store for this site is full").waitFor();
  assert.deepEqual(await stored(page), before);
  // Its keys grow longer by the day: refused to the last letter, and all is as it was.
  await archive(page).click();
  await press(page, "Remove Rowan");
  await page.waitForTimeout(200);
  assert.deepEqual(await stored(page), before);
  await page.evaluate(() => {
    const key = Object.keys(localStorage).find((it) => it.startsWith("neighbor.") && localStorage.getItem(it).length > 64);
    localStorage.setItem(key, localStorage.getItem(key).slice(64));
  });
  await press(page, "Remove Rowan");
  await page.getByText("Rowan is removed.").waitFor();
  const keys = Object.keys(await stored(page));
  assert.ok(keys.some((it) => it.startsWith("torpor.removed.")));
  assert.equal(keys.filter((it) => it.startsWith("torpor.bike.")).length, 1);
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (key.startsWith("neighbor.")) localStorage.removeItem(key);
  });
  await press(page, "Undo");
  await page.getByRole("button", { name: "Remove Rowan" }).waitFor();
  await clean(page);
});
