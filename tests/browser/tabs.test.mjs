// Two tabs of one person, and two bikes of one browser: what one writes the other takes in, and neither writes over the other.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, stop } from "./harness.mjs";
import { blank, eventually, fillStore, kept, line, press, roomInStore, tick, type, unfold } from "./sheet.mjs";

after(stop);

const at = (page) => page.clock.setFixedTime(new Date("2026-11-14T12:00:00"));
const book = (page) => page.getByRole("region", { name: "Logbook", exact: true });
const openBook = (page) => page.getByRole("button", { name: "Logbook", exact: true }).click();
const titles = async (page) => (await book(page).locator(".rows > li h4 button").allInnerTexts()).map((it) => it.replace(/^[▸▾]\s*/, "").split(" · ")[1]).sort();
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

const FUEL = "Fill up and stabilize";
const reload = async (page) => {
  await page.reload();
  await laidOut(page);
};
const start = (page) => page.getByRole("button", { name: "Start your own" }).click();
const hide = (page) => page.evaluate(() => dispatchEvent(new Event("pagehide")));
const tank = async (page) => blank(await unfold(page, FUEL), "Tank volume");
const holds = (entry, text) => eventually(async () => assert.equal(await entry.inputValue(), text), 5000);
const question = (page) => page.getByText("Tank volume was changed in another tab, too.");
const told = (page) => page.getByText("Tank volume was changed in another tab, and that stands here now.");

/** Two tabs of a kept bike whose tank takes 15 L. */
async function twoTabs(first = async () => {}, clock = at) {
  const context = await openContext({ locale: "en-GB" });
  const one = await openPage({ context, hash: "#layup", before: clock });
  await start(one);
  await (await tank(one)).fill("15");
  await first(one);
  await kept(one);
  const other = await openPage({ context, hash: "#layup", before: clock });
  await holds(await tank(other), "15");
  return { context, one, other, close: async () => {
    await clean(other);
    await clean(one);
    await context.close();
  } };
}

test("a fact that both tabs changed is asked, with both values, and either can be had", async () => {
  const { one, other, close } = await twoTabs();
  for (const [mine, theirs, take, left] of [["17", "16", "Keep 17 L", "17"], ["19", "18", "Take the other’s 18 L", "18"]]) {
    await (await tank(other)).fill(mine);
    await (await tank(one)).fill(theirs);
    await (await tank(one)).blur();
    await hide(one);
    await question(other).waitFor();
    await holds(await tank(other), mine);
    // The one that wrote first is told that its own no longer stands.
    await told(one).waitFor();
    await press(other, take);
    assert.equal(await question(other).count(), 0);
    for (const page of [one, other]) await holds(await tank(page), left);
    assert.equal(await question(one).count(), 0);
    // Where its own stands again, there is nothing to be told any more.
    if (left === theirs) await told(one).waitFor({ state: "detached" });
    else await press(one, `Keep ${left} L`);
    assert.equal(await told(one).count(), 0);
  }
  // The same in both, and different facts, are no question.
  await (await tank(other)).fill("20");
  await (await tank(one)).fill("20");
  await (await tank(one)).blur();
  await blank(line(one, FUEL), "Fuel in the tank").fill("4");
  await hide(one);
  await holds(blank(line(other, FUEL), "Fuel in the tank"), "4");
  assert.equal(await question(other).count(), 0);
  await reload(other);
  await holds(await tank(other), "20");
  await close();
});

test("a torque that was typed here and gives way to another tab's is told by name and can be taken back, on the bench as well", async () => {
  const torque = async (page) => {
    const row = line(page, "Drain plug");
    const fold = row.getByRole("button", { name: "Drain plug", exact: true });
    if ((await fold.getAttribute("aria-expanded")) !== "true") await fold.click();
    return blank(row, "Torque at the fastener");
  };
  const { one, other, close } = await twoTabs(async (page) => {
    await type(await unfold(page, "Torques"), { Adapter: ["none"], "Torque at the fastener": "20", Fastener: "Drain plug" });
    await press(page, "Keep this fastener");
  });
  await unfold(other, "Torques");
  const [here, there] = [await torque(one), await torque(other)];
  // The figure that is wrong is typed first and written last.
  await there.fill("250");
  await here.fill("25");
  await here.blur();
  await hide(one);
  const asked = (page, rest) => page.getByText(`Drain plug: Torque at the fastener was changed in another tab, ${rest}.`);
  await asked(other, "too").waitFor();
  await asked(one, "and that stands here now").waitFor();
  await holds(here, "250");
  for (const [page, name] of [[one, "Take back 25 N·m"], [other, "Take the other’s 25 N·m"]]) {
    await page.getByRole("link", { name: "Bench view" }).click();
    await page.getByRole("button", { name, exact: true }).waitFor();
  }
  await press(one, "Take back 25 N·m");
  assert.equal(await asked(one, "and that stands here now").count(), 0);
  // The other has what it was asked about.
  await asked(other, "too").waitFor({ state: "detached" });
  for (const page of [one, other]) {
    await page.goBack();
    await reload(page);
    await unfold(page, "Torques");
    await holds(await torque(page), "25");
  }
  await close();
});

test("what another tab typed over is told again where it is typed over again, and not where it was typed anew here", async () => {
  const { one, other, close } = await twoTabs();
  const [here, there] = [await tank(one), await tank(other)];
  await here.blur();
  for (const text of ["16", "18"]) {
    await there.fill(text);
    await there.blur();
    await hide(other);
    await holds(here, text);
    await one.getByRole("button", { name: `Keep ${text} L`, exact: true }).waitFor();
    await one.getByRole("button", { name: "Take back 15 L", exact: true }).waitFor();
  }
  await here.fill("19");
  await told(one).waitFor({ state: "detached" });
  await close();
});

test("nothing changes under the owner's keys: it waits until they leave, and is asked where they type over it", async () => {
  const { one, other, close } = await twoTabs();
  const [here, there] = [await tank(other), await tank(one)];
  await here.focus();
  await there.fill("18");
  await blank(line(one, FUEL), "Fuel in the tank").fill("4");
  // All else is there already.
  await holds(blank(line(other, FUEL), "Fuel in the tank"), "4");
  await holds(here, "15");
  await here.blur();
  await holds(here, "18");
  assert.equal(await question(other).count(), 0);
  await here.focus();
  await there.fill("19");
  await blank(line(one, FUEL), "Fuel in the tank").fill("5");
  await holds(blank(line(other, FUEL), "Fuel in the tank"), "5");
  await other.keyboard.press("End");
  await other.keyboard.type(".5");
  await question(other).waitFor();
  await holds(here, "18.5");
  await press(other, "Take the other’s 19 L");
  await holds(here, "19");
  // An entry of the logbook that is being written stays open and keeps the keys.
  await openBook(other);
  await press(other, "Add an entry");
  await book(other).getByLabel("Remarks").fill("blue");
  await hide(other);
  await tick(one, "Chain").check();
  await hide(one);
  await are(other, ["Chain", "Entry"].sort());
  await other.keyboard.type(" soap");
  await holds(book(other).getByLabel("Remarks"), "blue soap");
  await hide(other);
  await reload(one);
  await openBook(one);
  await book(one).getByText("blue soap").waitFor();
  await close();
});

test("fasteners that both tabs change, add and take out are all there, and so are both tabs' ticks", async () => {
  const { one, other, close } = await twoTabs(async (page) => {
    const torques = await unfold(page, "Torques");
    for (const name of ["Axle nut", "Drain plug", "Header nut", "Lever pivot"]) {
      await type(torques, { Adapter: ["none"], "Torque at the fastener": "20", Fastener: name });
      await press(page, "Keep this fastener");
    }
  });
  const change = async (page, name, torque) => {
    await line(page, name).getByRole("button", { name, exact: true }).click();
    await blank(line(page, name), "Torque at the fastener").fill(torque);
  };
  await unfold(other, "Torques");
  await type(line(one, "Torques"), { Adapter: ["none"], "Torque at the fastener": "12", Fastener: "Master pin" });
  await press(one, "Keep this fastener");
  await type(line(other, "Torques"), { Adapter: ["none"], "Torque at the fastener": "44", Fastener: "Pinch bolt" });
  await press(other, "Keep this fastener");
  await change(one, "Axle nut", "90");
  await change(other, "Header nut", "25");
  await line(other, "Drain plug").getByRole("button", { name: "Drain plug", exact: true }).click();
  await press(other, "Remove Drain plug");
  await tick(one, "Chain").check();
  await tick(other, "Cover").check();
  await hide(one);
  await hide(other);
  for (const page of [one, other]) {
    await line(page, "Pinch bolt").waitFor();
    await line(page, "Master pin").waitFor();
    await eventually(async () => assert.equal(await line(page, "Drain plug").count(), 0));
    for (const title of ["Chain", "Cover"]) await eventually(async () => assert.equal(await tick(page, title).isChecked(), true));
    await reload(page);
    await unfold(page, "Torques");
    for (const [name, torque] of [["Axle nut", "90"], ["Header nut", "25"], ["Lever pivot", "20"], ["Master pin", "12"], ["Pinch bolt", "44"]]) {
      await line(page, name).getByRole("button", { name, exact: true }).click();
      await holds(blank(line(page, name), "Torque at the fastener"), torque);
    }
  }
  await close();
});

test("a torque that one tab types and a name that the other gives the same fastener come to two, each as it was seen", async () => {
  const { one, other, close } = await twoTabs(async (page) => {
    await type(await unfold(page, "Torques"), { Adapter: ["none"], "Torque at the fastener": "20", Fastener: "Drain plug" });
    await press(page, "Keep this fastener");
  });
  await unfold(other, "Torques");
  for (const page of [one, other]) await line(page, "Drain plug").getByRole("button", { name: "Drain plug", exact: true }).click();
  await blank(line(other, "Drain plug"), "Torque at the fastener").fill("24");
  await blank(line(one, "Drain plug"), "Fastener").fill("Rear axle");
  await hide(one);
  await hide(other);
  for (const page of [one, other]) {
    await line(page, "Rear axle").waitFor();
    await line(page, "Drain plug").waitFor();
    await reload(page);
    await unfold(page, "Torques");
    for (const [name, torque] of [["Rear axle", "20"], ["Drain plug", "24"]]) {
      await line(page, name).getByRole("button", { name, exact: true }).click();
      await holds(blank(line(page, name), "Torque at the fastener"), torque);
    }
  }
  await close();
});

/** Two hundred edits by one tab, a write a few milliseconds after each: entries of the logbook and blanks of the sheet in turn. */
const editTwoHundredTimes = (page, name) => page.evaluate(async (name) => {
  const pause = (ms) => new Promise((done) => { window.realTimeout(done, ms); });
  const put = (input, text) => {
    input.value = text;
    input.dispatchEvent(new Event("input", { bubbles: true }));
  };
  // Each fact once, and every other one: what both change is asked, and not meant here.
  const facts = new Map();
  for (const it of document.querySelectorAll("ol.sheet input[type=text][id^=line-]:not([id*=-head-])")) facts.set(it.id.split("-").at(-1), it);
  const own = [...facts.values()].filter((_, at) => at % 2 === (name === "one" ? 0 : 1));
  const add = [...document.querySelectorAll("button")].find((it) => it.textContent === "Add an entry");
  const typed = [];
  for (let at = 0; at < 200; at += 1) {
    const blank = at % 4 === 3 ? own[(at - 3) / 4] : undefined;
    typed.push(`${name} ${at}.`);
    if (blank?.isConnected) {
      put(blank, typed.at(-1));
    } else {
      add.click();
      const line = () => document.querySelector("input[id^=logged-][id$=log_line]");
      for (let tries = 0; tries < 250 && !(line()?.value === ""); tries += 1) await pause(4);
      put(line(), typed.at(-1));
    }
    await pause(16);
  }
  return typed;
}, name);

test("two tabs edit one bike two hundred times each at once, and every edit of both is there", async () => {
  const { context, one, other, close } = await twoTabs(undefined, async () => {});
  // The pause before a write is a few milliseconds, so that the writes of both cross as often as they can.
  await context.addInitScript(() => {
    window.realTimeout = window.setTimeout.bind(window);
    window.setTimeout = (act, pause) => window.realTimeout(act, pause === 400 ? 7 : pause);
  });
  for (const page of [one, other]) {
    await reload(page);
    for (const title of [FUEL, "Last run", "Oil", "Battery"]) await unfold(page, title);
    await openBook(page);
  }
  const typed = (await Promise.all([editTwoHundredTimes(one, "one"), editTwoHundredTimes(other, "other")])).flat();
  assert.equal(new Set(typed).size, 400);
  // Records are base64url of bytes among which the texts stand as they are.
  const lost = async (page) => {
    const texts = await page.evaluate(() => Object.entries(localStorage).filter(([key]) => /^torpor\.(bike|season|garage|log)/.test(key)).map(([, it]) => atob(it.slice(2).replaceAll("-", "+").replaceAll("_", "/"))).join(" "));
    return typed.filter((it) => !texts.includes(it));
  };
  await eventually(async () => assert.deepEqual(await lost(one), []), 5000);
  for (const page of [one, other]) {
    await hide(page);
    await reload(page);
  }
  assert.deepEqual(await lost(other), []);
  await close();
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
  assert.equal(await book(page).getByLabel("Remarks").count(), 0, "nothing of the other bike’s stands open");
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
  await page.getByText("the browser’s store for this site is full").waitFor();
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

test("a new bike whose first writes were refused does not write over what another tab made of the garage meanwhile", async () => {
  const label = (page) => blank(line(page, FUEL), "Stabilizer label");
  const { one, other, close } = await twoTabs((page) => label(page).fill("1:320"));
  await press(other, "Garage");
  await fillStore(other);
  await other.getByRole("button", { name: "New bike" }).click();
  await other.getByText("store for this site is full").waitFor();
  await label(one).fill("1:330");
  await label(one).blur();
  await hide(one);
  await roomInStore(other);
  await eventually(async () => assert.equal(await other.getByText("store for this site is full").count(), 0), 9000);
  await unfold(other, FUEL);
  for (const page of [one, other]) await holds(label(page), "1:330");
  await reload(one);
  await unfold(one, FUEL);
  await holds(label(one), "1:330");
  await close();
});

test("what another tab saved after a bike was replaced stays when that is taken back", async () => {
  const { one, other, close } = await twoTabs();
  await press(one, "Link");
  const link = await one.getByLabel("Your link").inputValue();
  await (await tank(one)).fill("16");
  await hide(one);
  await holds(await tank(other), "16");
  await one.evaluate((hash) => { location.hash = hash; }, link.slice(link.indexOf("#")));
  await one.getByRole("button", { name: /^Replace/ }).click();
  await holds(await tank(other), "15");
  const capacity = async (page) => blank(await unfold(page, "Battery"), "Capacity");
  // Both at once, so that the first has not heard of it when it takes its own back.
  await (await capacity(other)).fill("12");
  await (await capacity(other)).blur();
  await one.evaluate(() => { addEventListener("storage", (event) => event.stopImmediatePropagation(), { capture: true }); });
  await hide(other);
  await one.getByRole("button", { name: "Undo", exact: true }).first().click();
  for (const page of [one, other]) {
    await holds(await tank(page), "16");
    await holds(await capacity(page), "12");
  }
  await reload(one);
  await holds(await capacity(one), "12");
  await holds(await tank(one), "16");
  await close();
});

test("a write that crossed this tab's is taken in from what is told of it, though it stands nowhere any more", async () => {
  const { context, one, other } = await twoTabs(async (page) => {
    await blank(line(page, "Season"), "Park date").fill("2026-11-14");
    await blank(line(page, FUEL), "Stabilizer label").fill("1:320");
    await tick(page, "Wash and dry").check();
  });
  await other.close();
  const records = (page) => page.evaluate(() => Object.fromEntries(Object.entries(localStorage).filter(([key]) => /^torpor\.(bike|season|garage|log)/.test(key))));
  const before = await records(one);
  // Another process, which has the same copy of the store and tells of its writes later.
  const away = await openContext({ locale: "en-GB" });
  const them = await openPage({ context: away, before: at });
  await them.evaluate(([all, key]) => {
    for (const [key, text] of Object.entries(all)) localStorage.setItem(key, text);
    localStorage.setItem("torpor.open", key);
  }, [before, await one.evaluate(() => localStorage.getItem("torpor.open"))]);
  await reload(them);
  await blank(await unfold(them, "Battery"), "Capacity").fill("12");
  await blank(line(them, "Season"), "Ride date").fill("2027-03-28");
  await blank(await unfold(them, FUEL), "Stabilizer label").fill("1:330");
  await tick(them, "Cover").check();
  await hide(them);
  const theirs = await records(them);
  await unfold(one, "Battery");
  await (await tank(one)).fill("17");
  await blank(line(one, "Season"), "Park date").fill("2026-11-20");
  await blank(line(one, "Season"), "Coldest night").fill("-24");
  await tick(one, "Chain").check();
  await hide(one);
  await one.evaluate((all) => {
    for (const [key, newValue] of Object.entries(all)) dispatchEvent(new StorageEvent("storage", { key, newValue }));
  }, theirs);
  const whole = async () => {
    await holds(await tank(one), "17");
    await holds(blank(await unfold(one, "Battery"), "Capacity"), "12");
    await holds(blank(line(one, "Season"), "Park date"), "2026-11-20");
    await holds(blank(line(one, "Season"), "Ride date"), "2027-03-28");
    await holds(blank(await unfold(one, FUEL), "Stabilizer label"), "1:330");
    await holds(blank(line(one, "Season"), "Coldest night"), "-24");
    for (const title of ["Wash and dry", "Chain", "Cover"]) await eventually(async () => assert.equal(await tick(one, title).isChecked(), true));
    assert.equal(await one.getByText("changed in another tab, too").count(), 0);
  };
  await whole();
  // The one fact of this tab's that gave way is told.
  await one.getByText("Stabilizer label was changed in another tab, and that stands here now.").waitFor();
  await hide(one);
  await reload(one);
  await whole();
  await openBook(one);
  await are(one, ["Chain", "Cover", "Wash and dry"]);
  await clean(them);
  await away.close();
  await clean(one);
  await context.close();
});

test("the bench shows at once what another tab makes of a figure", async () => {
  const context = await openContext({ locale: "en-GB" });
  const desk = await openPage({ context, hash: "#layup/torques", before: at });
  await desk.getByRole("button", { name: "Start your own" }).click();
  const torques = line(desk, "Torques");
  await type(torques, { Adapter: ["none"], "Torque at the fastener": "30", Graduation: "1", "Lowest mark": "5", "Highest mark": "60" });
  await kept(desk);
  const bench = await openPage({ context, hash: "#bench/layup/torques", before: at });
  const head = bench.locator(".bench .head .n");
  await eventually(async () => assert.equal(await head.textContent(), "30"));
  await blank(torques, "Torque at the fastener").fill("24");
  await kept(desk);
  await eventually(async () => assert.equal(await head.textContent(), "24"), 5000);
  // Taken back at the desk: the bench follows again.
  await blank(torques, "Torque at the fastener").fill("25");
  await kept(desk);
  await eventually(async () => assert.equal(await head.textContent(), "25"), 5000);
  await clean(bench);
  await clean(desk);
  await context.close();
});
