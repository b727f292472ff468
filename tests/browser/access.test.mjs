// For everybody: keyboard alone, the automatic rules, narrow pages, targets, what is said aloud.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { axe, clean, noSidewaysScroll, openPage, stop } from "./harness.mjs";
import { answers, beside, blank, choice, eventually, line, type, unfold } from "./sheet.mjs";

after(stop);

const METRIC = { locale: "en-GB" };
const LINES = ["Fill up and stabilize", "Last run", "Oil", "Torques", "Battery"];

/** What the page can look like; each lays out one state on a page that was just opened. */
const STATES = {
  "the sheet folded": { hash: "" },
  "all lines open": { act: async (page) => { for (const title of LINES) await unfold(page, title); } },
  "a blank bike, all lines open": {
    act: async (page) => {
      await page.getByRole("button", { name: "Start your own" }).click();
      for (const title of LINES) await unfold(page, title);
      // Without an answer there is no working to look at: the torque line has one with its first figure.
      await type(line(page, "Torques"), { Adapter: ["none"], "Torque at the fastener": "25" });
      await page.locator("summary:visible").first().click();
    },
  },
  "the torque quick sum": { hash: "#torque" },
  "the oil quick sum": { hash: "#oil" },
  "the fuel quick sum": { hash: "#fuel" },
  "the battery quick sum": { hash: "#battery" },
  "the link drawer": { act: (page) => page.getByRole("button", { name: "Link", exact: true }).click() },
  "the garage drawer": { act: (page) => page.getByRole("button", { name: "Garage", exact: true }).click() },
  "the field for a link": { act: (page) => page.getByRole("button", { name: "Paste a link" }).click() },
  "a link’s preview": {
    act: async (page) => {
      await page.getByRole("button", { name: "Link", exact: true }).click();
      const link = await page.getByLabel("Your link").inputValue();
      await page.evaluate((fragment) => { location.hash = fragment; }, link.slice(link.indexOf("#")));
      await line(page, "A bike from a link").waitFor();
    },
  },
  "a link that is cut off": { hash: "#1.AAAA" },
  "an address that opens nothing": { hash: "#nowhere" },
  "texts that are not taken": {
    hash: "#torque",
    act: async (page) => {
      const sum = line(page, "Torque wrench setting");
      await type(sum, { "Torque at the fastener": "a lot", "Wrench length, hand to square drive": "1,000", Graduation: "5 V" });
      await eventually(async () => assert.match(await beside(sum, "Graduation"), /not a unit/));
    },
  },
  "nothing is kept": { blockStorage: true },
  "a kept fastener removed": {
    hash: "#layup/torques",
    act: async (page) => {
      await page.getByRole("button", { name: "Start your own" }).click();
      const torques = line(page, "Torques");
      for (const name of ["Axle nut", "Header nut"]) {
        await type(torques, { Adapter: ["none"], "Torque at the fastener": "25", Fastener: name });
        await torques.getByRole("button", { name: "Keep this fastener" }).click();
      }
      await page.getByRole("button", { name: "Axle nut", exact: true }).click();
      await page.getByRole("button", { name: "Remove Axle nut" }).click();
      await page.getByRole("button", { name: "Header nut", exact: true }).click();
    },
  },
};

/** The smallest thing to press or type in, as far as it is under 24 px; WCAG 2.2, 2.5.8, links in a text aside. */
const smallTargets = (page) =>
  page.evaluate(() => {
    const all = [...document.querySelectorAll("button, input:not(.picker), select, textarea, summary, nav a, .mark")];
    const seen = all.map((it) => {
      // A radio or a box is pressed by its label as well.
      const parts = [it, ...(["radio", "checkbox"].includes(it.type) ? it.labels : [])].map((part) => part.getBoundingClientRect());
      return { it, width: Math.max(...parts.map((part) => part.width)), height: Math.max(...parts.map((part) => part.height)) };
    });
    return seen
      .filter(({ width, height }) => width > 0 && (width < 24 || height < 24))
      .map(({ it, width, height }) => `${it.tagName} ${it.id || it.textContent}: ${width} × ${height}`);
  });

for (const [name, { act, hash = "", ...options }] of Object.entries(STATES)) {
  test(`${name}: the rules, light and dark, and 320 px wide`, async () => {
    // 320 px are also what 1280 px leave at 400 %.
    const page = await openPage({ hash, ...METRIC, viewport: { width: 320, height: 640 }, ...options });
    await act?.(page);
    await axe(page);
    await noSidewaysScroll(page);
    assert.deepEqual(await smallTargets(page), []);
    await page.emulateMedia({ colorScheme: "dark" });
    await axe(page);
    await page.setViewportSize({ width: 1280, height: 900 });
    await noSidewaysScroll(page);
    assert.deepEqual(await smallTargets(page), []);
    await clean(page);
  });
}

test("what is pressed most is at least 44 px high", async () => {
  const page = await openPage({ hash: "#layup/torques", ...METRIC, viewport: { width: 390, height: 844 } });
  const low = await page.evaluate(() => {
    const main = [...document.querySelectorAll("h3 button, .blank:not(.inline) input[type=text], .pill label, button.quiet, button.do, button.unit")];
    return main
      .map((it) => [it, it.getBoundingClientRect()])
      .filter(([it, box]) => box.height > 0 && box.height < 44 && !it.closest(".blank.inline"))
      .map(([it, box]) => `${it.className} ${it.textContent || it.id}: ${box.height}`);
  });
  assert.deepEqual(low, []);
  await clean(page);
});

/** Who has the focus, and whether that can be seen: an outline or a shadow on it or on its label, inside the window. */
const focused = (page) =>
  page.evaluate(() => {
    const it = document.activeElement;
    const marked = (part) => {
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(part);
      return (outlineStyle !== "none" && Number.parseFloat(outlineWidth) >= 2) || boxShadow !== "none";
    };
    const parts = [it, ...(it.labels ?? []), it.closest(".pill, .in") ?? it];
    const box = it.getBoundingClientRect();
    const middle = [box.x + box.width / 2, box.y + box.height / 2];
    const on = document.elementFromPoint(...middle);
    return {
      name: it.getAttribute("aria-label") ?? it.labels?.[0]?.textContent ?? it.textContent,
      role: it.type ?? it.tagName.toLowerCase(),
      marked: parts.some(marked),
      uncovered: parts.some((part) => part === on || part.contains(on)),
    };
  });

async function tab(page, key = "Tab") {
  await page.keyboard.press(key);
  const now = await focused(page);
  assert.ok(now.marked, `the focus is to be seen on ${now.name}`);
  assert.ok(now.uncovered, `nothing lies over ${now.name}`);
  return now.name.replace(/^[▸▾]/u, "");
}

async function tabTo(page, name) {
  const passed = [];
  for (let step = 0; step < 60; step += 1) {
    const now = await tab(page);
    passed.push(now);
    if (now === name) return;
  }
  assert.fail(`${name} was not reached: ${passed.join(" · ")}`);
}

test("the torque quick sum is done with the keyboard alone", async () => {
  const page = await openPage({ hash: "#torque", ...METRIC });
  const sum = line(page, "Torque wrench setting");
  await tabTo(page, "Torque at the fastener");
  await page.keyboard.type("2");
  await tabTo(page, "N·m, change unit");
  await page.keyboard.press("Space");
  await tabTo(page, "in line");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  assert.equal(await choice(sum, "Adapter", "pointing back").isChecked(), true);
  await page.keyboard.press("ArrowLeft");
  await page.keyboard.press("ArrowLeft");
  assert.equal(await choice(sum, "Adapter", "in line").isChecked(), true);
  assert.ok((await focused(page)).marked);
  for (const [label, text] of [
    ["Adapter length, drive to fastener", "40"], ["Wrench length, hand to square drive", "285"],
    ["Graduation", "0.5"], ["Lowest mark", "1"], ["Highest mark", "60"], ["Accuracy", "3"],
  ]) {
    await tabTo(page, label);
    await page.keyboard.type(text);
  }
  // 1 kgf·m = 9.80665 N·m by definition; 2 of them times 285 / 325. The nearest half is 17.
  await answers(sum, { "Exact setting": [2 * 9.80665 * (285 / 325), "17.20 N·m"], "Set the wrench to": [17, "17 N·m"] });
  await tabTo(page, "Working");
  await page.keyboard.press("Enter");
  await sum.getByText("Source:").first().waitFor();
  await tabTo(page, "The whole sheet");
  await page.keyboard.press("Enter");
  await page.getByRole("heading", { name: "Lay-up" }).waitFor();
  await clean(page);
});

test("a line is opened, filled in and closed with the keyboard alone", async () => {
  const page = await openPage(METRIC);
  await tabTo(page, "Start your own");
  await page.keyboard.press("Enter");
  const oil = line(page, "Oil");
  await tabTo(page, "Oil");
  await page.keyboard.press("Enter");
  await tabTo(page, "drain only");
  await page.keyboard.press("Space");
  await page.keyboard.press("ArrowRight");
  assert.equal(await choice(oil, "Oil change", "with filter").isChecked(), true);
  await tabTo(page, "Fill with filter");
  await page.keyboard.type("3550 mL");
  await tabTo(page, "Between the marks");
  await page.keyboard.type("300 mL");
  await answers(oil, { "Oil needed": [3.55, "3.55 L"], "First pour": [3.4, "3.40 L"] });
  for (let step = 0; step < 40; step += 1) {
    if ((await tab(page, "Shift+Tab")) === "Oil") break;
  }
  await page.keyboard.press("Space");
  assert.equal(await oil.getByRole("button", { name: "Oil", exact: true }).getAttribute("aria-expanded"), "false");
  await answers(oil, { "Oil needed": [3.55, "3.55 L"] });
  await clean(page);
});

/** A clock that the test turns. Its timers' numbers are over 32 bits, which no browser's are: they are made small. */
async function testClock(page) {
  await page.clock.install({ time: "2026-11-25T10:00:00" });
  await page.addInitScript(() => {
    const { setTimeout: set, clearTimeout: clear } = window;
    const numbers = [0];
    window.setTimeout = (...all) => numbers.push(set(...all)) - 1;
    window.clearTimeout = (number) => clear(numbers[number]);
  });
}

test("the answer is said once, about a second after typing stops", async () => {
  const page = await openPage({ hash: "#torque", ...METRIC, before: testClock });
  await page.clock.pauseAt("2026-11-25T11:00:00");
  const sum = line(page, "Torque wrench setting");
  await type(sum, { "Adapter length, drive to fastener": "40", "Wrench length, hand to square drive": "285" });
  await page.clock.runFor(3000);
  await page.evaluate(() => {
    window.said = [];
    new MutationObserver(() => window.said.push(document.querySelector("p.aloud[role=status]").textContent)).observe(
      document.querySelector("p.aloud[role=status]"), { childList: true, characterData: true, subtree: true });
  });
  const said = async () => (await page.evaluate(() => window.said)).map((it) => it.replaceAll("\u00a0", " "));
  for (const letter of ["2", "5", ".", "0"]) {
    await blank(sum, "Torque at the fastener").press(letter);
    await page.clock.runFor(400);
  }
  assert.deepEqual(await said(), [], "not while it is typed");
  await page.clock.runFor(500);
  assert.deepEqual(await said(), []);
  await page.clock.runFor(200);
  assert.deepEqual(await said(), ["Exact setting 21.92 N·m"]);
  await page.clock.runFor(5000);
  assert.deepEqual(await said(), ["Exact setting 21.92 N·m"], "once");
  assert.ok((await page.locator("output").evaluateAll((all) => all.every((it) => it.getAttribute("aria-live") === "off"))));
  await clean(page);
});

test("under forced colors, more contrast and reduced motion the page stands and nothing moves", async () => {
  const page = await openPage({ hash: "#torque", ...METRIC, forcedColors: "active", reducedMotion: "reduce", contrast: "more" });
  const sum = line(page, "Torque wrench setting");
  await type(sum, { "Torque at the fastener": "25", "Adapter length, drive to fastener": "40", "Wrench length, hand to square drive": "285" });
  await answers(sum, { "Exact setting": [21.923076923076923, "21.92 N·m"] });
  const moving = await page.evaluate(() => document.getAnimations().map((it) => `${it.effect.target?.className} ${it.transitionProperty ?? it.animationName}`)
    // A hint that goes is not a movement.
    .filter((it) => !it.endsWith(" display")));
  assert.deepEqual(moving, []);
  // Which pill is chosen must be seen without the page's own colors.
  const looks = await sum.getByRole("group", { name: "Adapter" }).evaluate((group) =>
    [...group.querySelectorAll("input")].map((it) => {
      const style = ["color", "backgroundColor", "borderTopColor", "borderTopWidth", "outlineStyle", "fontWeight", "textDecorationLine"];
      const of = (part) => style.map((name) => getComputedStyle(part)[name]).join();
      const box = it.getBoundingClientRect();
      const hidden = getComputedStyle(it).appearance === "none" || getComputedStyle(it).opacity === "0" || box.width < 8;
      return { checked: it.checked, look: hidden ? of(it) + of(it.labels[0]) : `a radio of the browser’s own ${it.checked}` };
    }),
  );
  const on = looks.find((it) => it.checked).look;
  assert.ok(looks.filter((it) => !it.checked).every((it) => it.look !== on));
  await page.keyboard.press("Tab");
  assert.ok((await focused(page)).marked);
  await clean(page);
});
