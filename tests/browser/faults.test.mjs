// What can happen to what is kept: every fault of the table in README.md that is not a test elsewhere. After each, nothing is lost that
// was kept once.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import { answers, blank, eventually, kept, line, stored, tick, type, unfold } from "./sheet.mjs";

after(stop);

const METRIC = { locale: "en-GB" };
const FUEL = "Fill up and stabilize";
const day = (text) => (page) => page.clock.setFixedTime(new Date(text));
const fact = async (page, title, label) => blank(await unfold(page, title), label);
const start = (page) => page.getByRole("button", { name: "Start your own" }).click();
const reload = async (page) => {
  await page.reload();
  await laidOut(page);
};
const openBook = (page) => page.getByRole("button", { name: "Logbook", exact: true }).click();
const book = (page) => page.getByRole("region", { name: "Logbook", exact: true });
const logged = async (page) => (await book(page).locator(".rows > li h4 button").allInnerTexts()).map((it) => it.replace(/^[▸▾]\s*/, "").split(" · ")[1]);

/** A bike with a name, a figure, a fastener, a tick in the logbook; kept. */
async function rowan(options = {}) {
  const page = await openPage({ hash: "#layup", before: day("2026-11-14T12:00:00"), ...METRIC, ...options });
  await start(page);
  await blank(line(page, "Season"), "Park date").fill("2026-11-14");
  const torques = await unfold(page, "Torques");
  await type(torques, { Adapter: ["none"], "Torque at the fastener": "25", Fastener: "Header nut" });
  await torques.getByRole("button", { name: "Keep this fastener" }).click();
  await type(await unfold(page, FUEL), { "Tank volume": "16", "Fuel in the tank": "4" });
  await tick(page, "Wash and dry").check();
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByLabel("Bike", { exact: true }).fill("Rowan");
  await kept(page);
  return page;
}

/** All of it stands in a fresh tab of the same browser. */
async function whole(page) {
  await page.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  assert.equal(await blank(line(page, "Season"), "Park date").inputValue(), "2026-11-14");
  assert.equal(await (await fact(page, FUEL, "Fuel in the tank")).inputValue(), "4");
  await unfold(page, "Torques");
  await line(page, "Header nut").waitFor();
  assert.equal(await tick(page, "Wash and dry").isChecked(), true);
  await openBook(page);
  await eventually(async () => assert.ok((await logged(page)).includes("Wash and dry")));
}

const AGAIN = "It is written again, as this page knew it.";
const ofBike = (all) => Object.keys(all).filter((it) => /^torpor\.(bike|season|log|past|calendar)\./.test(it)).sort();

test("site data removed under the page: the next change writes all again, the logbook's leaves too", async () => {
  const page = await rowan();
  // A second visit, which never opened the logbook.
  await reload(page);
  const before = await stored(page);
  await page.evaluate(() => localStorage.clear());
  await (await fact(page, FUEL, "Tank volume")).fill("17");
  await page.getByRole("alert").getByText(AGAIN).waitFor();
  await eventually(async () => assert.deepEqual(ofBike(await stored(page)), ofBike(before)));
  assert.equal(await page.getByText(AGAIN).count(), 1, "said once");
  await reload(page);
  await whole(page);
  assert.equal(await (await fact(page, FUEL, "Tank volume")).inputValue(), "17");
  await clean(page);
});

test("site data removed while nothing is typed: the page says so, works on, and keeps it again when asked", async () => {
  const context = await openContext(METRIC);
  const page = await rowan({ context });
  const other = await openPage({ context, hash: "#layup" });
  await other.evaluate(() => localStorage.clear());
  const said = page.getByRole("alert").getByText("was removed outside of this page");
  await said.waitFor();
  assert.deepEqual(await stored(page), {}, "nothing is written behind the back of whoever cleared it");
  await answers(await unfold(page, FUEL), { "Fuel to add": /L$/ });
  await page.getByRole("button", { name: "Keep it again" }).click();
  await page.getByRole("alert").getByText(AGAIN).waitFor();
  assert.equal(await page.getByRole("button", { name: "Keep it again" }).count(), 0);
  await other.close();
  const fresh = await openPage({ context, hash: "#layup" });
  await whole(fresh);
  await clean(fresh);
  await clean(page);
  await context.close();
});

test("a bike removed in another tab is there again with what is typed here, and once only", async () => {
  const context = await openContext(METRIC);
  const page = await rowan({ context });
  const other = await openPage({ context, hash: "#layup", before: day("2026-11-14T12:00:00") });
  const press = (name) => other.getByRole("button", { name, exact: true }).click();
  await press("Garage");
  await press("Archive Rowan");
  await press("Archived");
  await press("Remove Rowan");
  await page.getByRole("alert").getByText("was removed outside of this page").waitFor();
  await (await fact(page, FUEL, "Tank volume")).fill("17");
  await page.getByRole("alert").getByText(AGAIN).waitFor();
  await eventually(async () => assert.ok(ofBike(await stored(page)).length >= 3));
  assert.ok(!Object.keys(await stored(page)).some((it) => it.startsWith("torpor.removed.")));
  await reload(page);
  await whole(page);
  assert.equal(await (await fact(page, FUEL, "Tank volume")).inputValue(), "17");
  await clean(other);
  await clean(page);
  await context.close();
});

/** Lets the store keep only half of what is written under keys that start so, `times` times. */
const tear = (page, start, times) => page.evaluate(([start, times]) => {
  const real = Storage.prototype.setItem;
  window.torn = 0;
  Storage.prototype.setItem = function half(key, text) {
    const tears = key.startsWith(start) && window.torn < times;
    if (tears) window.torn += 1;
    return real.call(this, key, tears ? text.slice(0, text.length >> 1) : text);
  };
}, [start, times]);

const RECORDS = ["torpor.bike.", "torpor.season.", "torpor.garage", "torpor.log."];

/** Changes something in each record. */
async function changeAll(page, tank, park, label, step) {
  await (await fact(page, FUEL, "Tank volume")).fill(tank);
  await blank(line(page, FUEL), "Stabilizer label").fill(label);
  await blank(line(page, "Season"), "Park date").fill(park);
  await tick(page, step).check();
}

/** All of it stands there, and nobody is asked. */
async function changed(page, tank, park, label, step) {
  assert.equal(await (await fact(page, FUEL, "Tank volume")).inputValue(), tank);
  assert.equal(await blank(line(page, FUEL), "Stabilizer label").inputValue(), label);
  assert.equal(await blank(line(page, "Season"), "Park date").inputValue(), park);
  assert.equal(await tick(page, step).isChecked(), true);
  assert.equal(await page.getByText("changed in another tab").count(), 0);
}

for (const record of RECORDS) test(`a torn write of ${record} is written once more, and nobody notices`, async () => {
  const page = await rowan();
  await tear(page, record, 1);
  await changeAll(page, "17", "2026-11-14", "1:320", "Chain");
  await eventually(async () => assert.equal(await page.evaluate(() => window.torn), 1));
  await kept(page);
  assert.equal(await page.getByText("could not be kept").count(), 0);
  await reload(page);
  await whole(page);
  await changed(page, "17", "2026-11-14", "1:320", "Chain");
  await clean(page);
});

for (const record of RECORDS) for (const [what, spoil] of [
  ["tears every write", (record) => { const real = Storage.prototype.setItem; Storage.prototype.setItem = function half(key, text) { real.call(this, key, key.startsWith(record) && window.spoils ? text.slice(0, 9) : text); }; }],
  ["drops every write without a word", (record) => { const real = Storage.prototype.setItem; Storage.prototype.setItem = function none(key, text) { if (!(key.startsWith(record) && window.spoils)) real.call(this, key, text); }; }],
]) test(`a store that ${what} of ${record}: it is said, what stood there still does, and it is tried again; a halfway save is nobody else's`, async () => {
  const page = await rowan();
  const before = Object.keys(await stored(page)).find((it) => it.startsWith(record));
  const text = (await stored(page))[before];
  await page.evaluate(() => { window.spoils = true; });
  await page.evaluate(spoil, record);
  await changeAll(page, "17", "2026-11-20", "1:320", "Chain");
  await page.getByRole("alert").getByText("holds something else than what was written").waitFor();
  if (what.startsWith("drops")) assert.equal((await stored(page))[before], text);
  // Typed on, and taken back.
  await changeAll(page, "16", "2026-11-14", "1:330", "Cover");
  await tick(page, "Chain").uncheck();
  await unfold(page, "Torques");
  await line(page, "Header nut").getByRole("button", { name: "Header nut", exact: true }).click();
  await blank(line(page, "Header nut"), "Torque at the fastener").fill("27");
  await page.evaluate(() => dispatchEvent(new Event("pagehide")));
  await blank(line(page, "Header nut"), "Torque at the fastener").fill("28");
  await page.evaluate(() => dispatchEvent(new Event("pagehide")));
  await page.evaluate(() => { window.spoils = false; });
  // By itself, without a further letter.
  await eventually(async () => assert.equal(await page.getByText("could not be kept").count(), 0), 9000);
  for (const again of [false, true]) {
    if (again) {
      await reload(page);
      await whole(page);
    }
    await changed(page, "16", "2026-11-14", "1:330", "Cover");
    assert.equal(await tick(page, "Chain").isChecked(), false);
    assert.equal(await page.getByRole("button", { name: "Header nut", exact: true }).count(), 1, "a fastener is not doubled");
  }
  await clean(page);
});

test("a record damaged under the open page is set aside, and the sheet is kept as it stands", async () => {
  const page = await rowan();
  await page.evaluate(() => {
    for (const key of Object.keys(localStorage)) if (/\.(bike|season)\./.test(key)) localStorage.setItem(key, "1.AAAA");
  });
  await (await fact(page, FUEL, "Tank volume")).fill("17");
  await page.getByRole("alert").getByText("is damaged; it is set aside unchanged").first().waitFor();
  await eventually(async () => assert.equal(Object.keys(await stored(page)).filter((it) => it.startsWith("torpor.damaged.")).length, 2));
  await kept(page);
  await reload(page);
  await whole(page);
  assert.equal(await (await fact(page, FUEL, "Tank volume")).inputValue(), "17");
  await clean(page);
});

test("a newer page writes while an old tab is open: the old one writes nothing any more, keeps its sheet, and offers to reload", async () => {
  const page = await rowan();
  const before = await stored(page);
  const key = ofBike(before)[0];
  await page.evaluate((key) => localStorage.setItem(key, localStorage.getItem(key).replace(/^1\./, "2.")), key);
  const newer = await stored(page);
  await (await fact(page, FUEL, "Tank volume")).fill("17");
  await page.getByRole("alert").getByText("was written by a newer Torpor (form 2, this page knows 1)").waitFor();
  await page.getByText("take the link or a backup file along before you reload").waitFor();
  assert.equal(await (await fact(page, FUEL, "Tank volume")).inputValue(), "17");
  assert.equal(await (await fact(page, FUEL, "Fuel in the tank")).inputValue(), "4", "nothing of the sheet is lost");
  await tick(page, "Chain").check();
  await page.evaluate(() => dispatchEvent(new Event("pagehide")));
  assert.deepEqual(await stored(page), newer);
  await page.evaluate(([key, text]) => localStorage.setItem(key, text), [key, before[key]]);
  await Promise.all([page.waitForEvent("load"), page.getByRole("alert").getByRole("button", { name: "Reload" }).click()]);
  await laidOut(page);
  await whole(page);
  await clean(page);
});

test("storage that is blocked under the open page: it is said, and the sheet works on", async () => {
  const page = await rowan();
  await page.evaluate(() => {
    const real = Object.getOwnPropertyDescriptor(Window.prototype, "localStorage") ?? Object.getOwnPropertyDescriptor(window, "localStorage");
    Object.defineProperty(window, "localStorage", { configurable: true, get() {
      if (window.open4) return real.get.call(window);
      throw new DOMException("Storage is blocked.", "SecurityError");
    } });
  });
  await (await fact(page, FUEL, "Tank volume")).fill("17");
  await page.getByRole("alert").getByText("Nothing is kept here now").waitFor();
  await answers(line(page, FUEL), { "Fuel to add": /L$/ });
  await page.evaluate(() => { window.open4 = true; });
  await (await fact(page, FUEL, "Tank volume")).fill("18");
  await eventually(async () => assert.equal(await page.getByText("Nothing is kept here now").count(), 0));
  await reload(page);
  await whole(page);
  assert.equal(await (await fact(page, FUEL, "Tank volume")).inputValue(), "18");
  await clean(page);
});

test("everything the browser kept is gone by the next visit: the bookmarked link brings the bike back", async () => {
  const page = await rowan();
  await page.getByRole("button", { name: "Link", exact: true }).click();
  await page.getByLabel("Send what you wrote, too: names, own steps, reasons, places").check();
  const link = await page.getByLabel("Your link").inputValue();
  await clean(page);
  const fresh = await openPage({ ...METRIC, hash: link.slice(link.indexOf("#")), before: day("2027-03-20T12:00:00") });
  await fresh.getByRole("button", { name: "Keep as a new bike" }).click();
  await fresh.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  assert.equal(await (await fact(fresh, FUEL, "Tank volume")).inputValue(), "16");
  await kept(fresh);
  await reload(fresh);
  await fresh.getByRole("heading", { name: "Rowan", exact: true }).waitFor();
  await clean(fresh);
});

for (const [what, then] of [["back a year", "2025-11-14T12:00:00"], ["to 1970", "1970-01-02T12:00:00"], ["forward ten years", "2036-11-14T12:00:00"]]) {
  test(`the clock is set ${what} between visits: all is there, and what is typed then is kept`, async () => {
    const context = await openContext(METRIC);
    const page = await rowan({ context });
    await clean(page);
    const later = await openPage({ context, hash: "#layup", before: day(then) });
    await whole(later);
    await (await fact(later, FUEL, "Tank volume")).fill("17");
    await tick(later, "Chain").check();
    await kept(later);
    await clean(later);
    const back = await openPage({ context, hash: "#layup", before: day("2026-11-15T12:00:00") });
    await whole(back);
    assert.equal(await (await fact(back, FUEL, "Tank volume")).inputValue(), "17");
    assert.equal(await tick(back, "Chain").isChecked(), true);
    await clean(back);
    await context.close();
  });
}

// Days of the season are the calendar's, wherever the clock stands: on both sides of the date line, and over the days on which clocks are
// put forward and back (IANA zones; in New York on 2027-03-14, in London on 2027-03-28).
for (const [zone, now] of [["Pacific/Kiritimati", "2026-11-14T23:30:00+14:00"], ["Pacific/Pago_Pago", "2026-11-14T00:30:00-11:00"], ["America/New_York", "2027-03-14T03:30:00-04:00"], ["Europe/London", "2027-03-28T02:30:00+01:00"]]) {
  test(`in ${zone} the season's days are the same`, async () => {
    const page = await openPage({ hash: "#layup", timezoneId: zone, before: day(now), ...METRIC });
    await start(page);
    const season = line(page, "Season");
    await type(season, { "Park date": "2026-11-14", "Ride date": "2027-03-28" });
    // November has 16 days left, then 31, 31, 28 and 28.
    await eventually(async () => assert.match(await season.innerText(), /134 days/));
    await kept(page);
    await reload(page);
    assert.equal(await blank(season, "Park date").inputValue(), "2026-11-14");
    assert.match(await season.innerText(), /134 days/);
    await tick(page, "Wash and dry").check();
    await openBook(page);
    const [, month, date] = now.match(/-(\d\d)-(\d\d)T/);
    const name = { 11: "Nov", "03": "Mar" }[month];
    await eventually(async () => assert.match(await book(page).locator(".rows > li").first().innerText(), new RegExp(`${name} ${Number(date)}`)));
    await clean(page);
  });
}

/** What the page says of how long things stay, in a browser that answers so. */
async function lasts({ vendor, app = false, promised = false }) {
  const asked = [];
  const context = await openContext(METRIC);
  await context.exposeFunction("told", (what) => asked.push(what));
  await context.addInitScript(([vendor, app, promised]) => {
    if (vendor) Object.defineProperty(Navigator.prototype, "vendor", { get: () => vendor });
    const real = window.matchMedia.bind(window);
    window.matchMedia = (query) => (query.includes("standalone") ? { matches: app } : real(query));
    for (const way of ["persist", "persisted"]) StorageManager.prototype[way] = async () => { window.told(way); return promised; };
  }, [vendor, app, promised]);
  const page = await openPage({ context, hash: "#layup" });
  const footer = page.locator("footer");
  await page.waitForTimeout(200);
  assert.deepEqual(asked, [], "nothing is asked on load");
  assert.equal(await page.locator("#lasting").isVisible(), false);
  await start(page);
  await (await fact(page, FUEL, "Tank volume")).fill("16");
  await page.locator("#lasting").waitFor();
  await kept(page);
  assert.deepEqual(asked, ["persist"], "asked once, at the first save");
  const said = await footer.innerText();
  await reload(page);
  await page.locator("#lasting").waitFor();
  assert.deepEqual(asked, ["persist", "persisted"], "a later visit looks, and does not ask");
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByRole("button", { name: "Show the example" }).click();
  await eventually(async () => assert.equal(await page.locator("#lasting").isVisible(), false));
  await clean(page);
  await context.close();
  return said;
}

test("how long it lasts is said for the browser at hand, after it was asked for at the first save", async () => {
  const safari = "Apple Computer, Inc.";
  assert.match(await lasts({ promised: true }), /agreed to keep it until you clear it/);
  assert.match(await lasts({}), /has not agreed to keep it for good/);
  assert.match(await lasts({ vendor: safari, promised: true }), /Safari removes it after seven days of use without a visit/);
  assert.match(await lasts({ vendor: safari, app: true }), /a store of its own/);
});
