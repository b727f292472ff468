// The bench view: one step at a time, by tap and by keys, with the screen kept on.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { axe, clean, laidOut, noSidewaysScroll, openPage, stop } from "./harness.mjs";
import { blank, eventually, kept, line, press, type, unfold } from "./sheet.mjs";

after(stop);

const PHONE = { locale: "en-GB", viewport: { width: 390, height: 844 } };

/** Counts locks as the browser would give them: a hidden page loses its own. */
const wakeLock = (page) =>
  page.addInitScript(() => {
    window.locks = { asked: [], open: 0 };
    const request = async (kind) => {
      window.locks.asked.push(kind);
      window.locks.open += 1;
      return { release: async () => { window.locks.open -= 1; } };
    };
    Object.defineProperty(navigator, "wakeLock", { value: { request } });
    let state = "visible";
    Object.defineProperty(document, "visibilityState", { get: () => state });
    window.turn = (now) => {
      state = now;
      document.dispatchEvent(new Event("visibilitychange", { bubbles: true }));
    };
  });

const today = async (page) => {
  await page.clock.setFixedTime(new Date("2026-11-20T12:00:00"));
  await wakeLock(page);
};
const open = (hash, options = {}) => openPage({ hash, before: today, ...PHONE, ...options });

const heading = (page) => page.getByRole("heading", { level: 1 });
const at = (page, title) => eventually(async () => assert.equal((await heading(page).textContent()).replaceAll("\u00a0", " "), title));
/** Label and figure of an answer, as they are read. */
const figure = async (page, label) => {
  const answer = page.locator(".bench .answer").filter({ has: page.getByText(label, { exact: true }) });
  return (await answer.textContent()).replaceAll("\u00a0", " ").replace(label, "");
};

async function ownBike(hash) {
  const page = await open("#layup");
  await page.getByRole("button", { name: "Start your own" }).click();
  const torques = await unfold(page, "Torques");
  for (const [name, figure] of [["Header nut", "25"], ["Axle nut", "88"]]) {
    await type(torques, {
      Adapter: ["in line"], "Torque at the fastener": figure, "Adapter length, drive to fastener": "40",
      "Wrench length, hand to square drive": "285", Fastener: name,
    });
    await torques.getByRole("button", { name: "Keep this fastener" }).click();
  }
  await kept(page);
  if (hash) await page.evaluate((hash) => { location.hash = hash; }, hash);
  return page;
}

test("one step after another by tap and by keys, each with its figures", async () => {
  const page = await open("#layup");
  await page.getByRole("link", { name: "Bench view" }).click();
  await at(page, "Lay-up 1 of 17 Wash and dry");
  await page.getByText("Bike cold, mild soap").waitFor();
  assert.equal(await page.getByRole("button", { name: "Previous" }).isDisabled(), true);
  await press(page, "Next");
  await at(page, "Lay-up 2 of 17 Coolant");
  await page.keyboard.press("ArrowRight");
  await at(page, "Lay-up 3 of 17 Fill up and stabilize");
  assert.equal(new URL(page.url()).hash, "#bench/layup/fuel");
  // The example's tank of 16 L with 4 L in it, filled to 95 %: 15.2 − 4.
  assert.equal(await figure(page, "Fuel to add"), "11.2 L");
  assert.equal(await heading(page).evaluate((it) => it === document.activeElement), true, "who hears the page hears the next step");
  for (const [key, title] of [
    ["PageDown", "4 of 17 Last run"], ["Space", "5 of 17 Chain"], ["Shift+Space", "4 of 17 Last run"],
    ["PageUp", "3 of 17 Fill up and stabilize"], ["ArrowLeft", "2 of 17 Coolant"],
  ]) {
    await page.keyboard.press(key);
    await at(page, `Lay-up ${title}`);
  }
  await page.keyboard.press("Alt+ArrowUp");
  await page.keyboard.press("ArrowDown");
  await at(page, "Lay-up 2 of 17 Coolant");
  await page.getByRole("link", { name: "Back to the sheet" }).click();
  await line(page, "Coolant").waitFor();
  await page.keyboard.press("ArrowRight");
  assert.equal(await page.locator(".bench").count(), 0, "on the sheet keys turn nothing");
  await clean(page);
});

test("the example has its figures there and no tick", async () => {
  const page = await open("#bench/layup/oil");
  await at(page, "Lay-up 6 of 17 Oil");
  assert.equal(await figure(page, "Oil needed"), "3.10 L");
  assert.equal(await page.getByRole("checkbox").count(), 0);
  assert.deepEqual(await page.evaluate(() => Object.keys(localStorage)), [], "and nothing is kept of it");
  await clean(page);
});

test("fasteners one at a time, each with what to set", async () => {
  const page = await ownBike("#bench/layup/torques/1");
  await at(page, "Lay-up 11 of 18 Torques: Header nut");
  await page.getByText("Fastener 1 of 2", { exact: true }).waitFor();
  // 25 N·m with 40 mm in line on 285 mm: 25 × 285 / 325, by hand.
  assert.equal(await figure(page, "Exact setting"), "21.92 N·m");
  assert.equal(await page.getByRole("checkbox").count(), 0, "ticked when the last is tight");
  await press(page, "Next");
  await at(page, "Lay-up 11 of 18 Torques: Axle nut");
  assert.equal(await figure(page, "Exact setting"), "77.17 N·m");
  await page.getByRole("checkbox", { name: "Done: Torques" }).check();
  await press(page, "Next");
  await at(page, "Lay-up 12 of 18 Brake and clutch fluid");
  await page.getByRole("link", { name: "Back to the sheet" }).click();
  await eventually(async () => assert.equal(await page.getByRole("checkbox", { name: "Done: Torques" }).isChecked(), true));
  await clean(page);
});

test("a tick there is ticked on the sheet, and it comes back to where it was", async () => {
  const page = await ownBike("#bench");
  await at(page, "Lay-up 1 of 18 Wash and dry");
  await page.getByRole("checkbox", { name: "Done: Wash and dry" }).check();
  for (const title of ["2 of 18 Coolant", "3 of 18 Fill up and stabilize"]) {
    await press(page, "Next");
    await at(page, `Lay-up ${title}`);
  }
  await page.getByRole("link", { name: "Back to the sheet" }).click();
  await eventually(async () => assert.equal(await page.getByRole("checkbox", { name: "Done: Wash and dry" }).isChecked(), true));
  await page.getByRole("link", { name: "Wake-up", exact: true }).click();
  await page.getByRole("link", { name: "Bench view" }).click();
  await at(page, "Wake-up 1 of 15 Cover away");
  await kept(page);
  await page.evaluate(() => { location.hash = "#bench/layup"; });
  await at(page, "Lay-up 3 of 18 Fill up and stabilize");
  await page.goto(page.url().replace(/#.*/, "#bench"));
  await page.reload();
  await laidOut(page);
  await at(page, "Lay-up 3 of 18 Fill up and stabilize");
  await clean(page);
});

test("a step that waits cannot be ticked there either", async () => {
  const page = await ownBike("#bench/wakeup/first-start");
  await at(page, "Wake-up 13 of 15 First start");
  await page.getByText(/^Waits for: Open exhaust and intake, Fuel, Levels/).waitFor();
  assert.equal(await page.getByRole("checkbox", { name: "Done: First start" }).isDisabled(), true);
  await clean(page);
});

test("what is not known yet is said, and the way back opens its blanks", async () => {
  const page = await ownBike("#bench/layup/oil");
  await page.locator(".bench .head").getByText(/^needs /).waitFor();
  await page.getByRole("link", { name: "Back to the sheet" }).click();
  await blank(line(page, "Oil"), "Fill with filter").waitFor();
  await clean(page);
});

test("the screen is kept on at the bench alone, and asked again when it comes into sight", async () => {
  const page = await open("#layup");
  const locks = () => page.evaluate(() => window.locks);
  assert.deepEqual(await locks(), { asked: [], open: 0 });
  await page.getByRole("link", { name: "Bench view" }).click();
  await eventually(async () => assert.deepEqual(await locks(), { asked: ["screen"], open: 1 }));
  await press(page, "Next");
  assert.equal((await locks()).asked.length, 1, "once, not for every step");
  await page.evaluate(() => window.turn("hidden"));
  await eventually(async () => assert.equal((await locks()).open, 0));
  await page.evaluate(() => window.turn("visible"));
  await eventually(async () => assert.deepEqual(await locks(), { asked: ["screen", "screen"], open: 1 }));
  await page.getByRole("link", { name: "Back to the sheet" }).click();
  await eventually(async () => assert.equal((await locks()).open, 0));
  await page.evaluate(() => window.turn("hidden"));
  await page.evaluate(() => window.turn("visible"));
  assert.deepEqual(await locks(), { asked: ["screen", "screen"], open: 0 });
  await clean(page);
});

for (const [name, lock] of [
  ["refuses", { request: () => Promise.reject(new DOMException("No.", "NotAllowedError")) }],
  ["does not know", undefined],
]) {
  test(`a browser that ${name} the lock changes nothing else`, async () => {
    const before = (page) =>
      page.addInitScript((refuses) => {
        const request = () => Promise.reject(new DOMException("No.", "NotAllowedError"));
        Object.defineProperty(navigator, "wakeLock", { value: refuses ? { request } : undefined });
      }, lock !== undefined);
    const page = await openPage({ hash: "#bench/layup/oil", before, ...PHONE });
    await at(page, "Lay-up 6 of 17 Oil");
    await press(page, "Next");
    await at(page, "Lay-up 7 of 17 Other oils");
    await clean(page);
  });
}

test("targets for gloves, the rules, and no sideways scroll at 320 px", async () => {
  const page = await ownBike("#bench/layup/torques/2");
  await at(page, "Lay-up 11 of 18 Torques: Axle nut");
  for (const width of [320, 390, 1280]) {
    await page.setViewportSize({ width, height: 740 });
    const low = await page.locator(".bench").evaluate((bench) =>
      [...bench.querySelectorAll("button, label, a")]
        .map((it) => [it.textContent, it.getBoundingClientRect()])
        .filter(([, box]) => box.width < 72 || box.height < 72)
        .map(([text, box]) => `${text}: ${box.width} × ${box.height}`),
    );
    assert.deepEqual(low, [], `${width} px`);
    await noSidewaysScroll(page);
  }
  for (const hash of ["#bench/layup/torques/2", "#bench/layup/battery", "#bench/wakeup/first-start"]) {
    await page.evaluate((hash) => { location.hash = hash; }, hash);
    await page.locator(".bench").waitFor();
    for (const colorScheme of ["light", "dark"]) {
      await page.emulateMedia({ colorScheme });
      await axe(page);
      await contrast(page);
    }
    for (const width of [320, 1280]) {
      await page.setViewportSize({ width, height: 740 });
      await noSidewaysScroll(page);
    }
  }
  await clean(page);
});

for (const [width, height] of [[1280, 900], [390, 844]]) {
  test(`cautions stand right behind the head, and at the end nothing is under the bar, ${width} px wide`, async () => {
    const page = await open("#bench/layup/brakes", { viewport: { width, height } });
    await at(page, "Lay-up 11 of 17 Brake and clutch fluid");
    const bench = page.locator(".bench");
    const order = await bench.evaluate((it) => [...it.children].map((part) => part.className));
    const [head, cautions] = ["answer head", "cautions"].map((it) => order.indexOf(it));
    assert.ok(order.slice(head + 1, cautions).every((it) => ["why", "warning"].includes(it)), order.join());
    assert.ok(order.indexOf("answer") > cautions, "other figures after them");
    const ends = () => bench.evaluate((it) => {
      const bar = it.querySelector("nav").getBoundingClientRect().top;
      return {
        bar,
        first: it.querySelector(".cautions li").getBoundingClientRect().bottom,
        last: Math.max(...[...it.querySelectorAll(":scope > :not(nav)")].map((part) => part.getBoundingClientRect().bottom)),
        // Who presses there meets the sign that more lies below, or its cover.
        sign: document.elementFromPoint(innerWidth / 2, bar - 12) === it,
      };
    });
    const top = await ends();
    assert.ok(top.first < top.bar - 24, JSON.stringify(top));
    assert.ok(top.last > top.bar && top.sign, JSON.stringify(top));
    await page.evaluate(() => scrollTo(0, document.body.scrollHeight));
    const end = await ends();
    assert.ok(end.last <= end.bar - 24, JSON.stringify(end));
    await clean(page);
  });
}

/** Every text is 7:1 or more against the page, as WCAG 2.2 reckons it (1.4.6). */
async function contrast(page) {
  const low = await page.locator(".bench").evaluate((bench) => {
    const light = (color) => {
      const [red, green, blue] = color.match(/[\d.]+/g).slice(0, 3).map((it) => it / 255)
        .map((it) => (it <= 0.04045 ? it / 12.92 : ((it + 0.055) / 1.055) ** 2.4));
      return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
    };
    const behind = (it) => {
      const color = getComputedStyle(it).backgroundColor;
      return color === "rgba(0, 0, 0, 0)" && it.parentElement ? behind(it.parentElement) : color;
    };
    return [...bench.querySelectorAll("*")]
      .filter((it) => it.textContent.trim())
      .map((it) => {
        const pair = [light(getComputedStyle(it).color), light(behind(it))].sort((a, b) => b - a);
        return [it.className || it.tagName, (pair[0] + 0.05) / (pair[1] + 0.05)];
      })
      .filter(([, ratio]) => ratio < 7);
  });
  assert.deepEqual(low, []);
}
