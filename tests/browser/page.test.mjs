// The page as a page: nothing leaves it, its address opens what it says, and back and forward go where they should.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { clean, openPage, running, stop, troublesOf } from "./harness.mjs";
import { answers, blank, eventually, line, stored, type, unfold } from "./sheet.mjs";
import { withFasteners } from "./prepared.mjs";
import { FOLDER } from "./server.mjs";

after(stop);

const METRIC = { locale: "en-GB" };
const SUMS = { torque: "Torque wrench setting", oil: "Oil fill", fuel: "Fuel and stabilizer", battery: "Battery in storage" };

test("a visit through the whole page asks its own folder only, and each file once", async () => {
  const { host } = await running();
  host.asked.length = 0;
  const page = await openPage(METRIC);
  for (const title of ["Fill up and stabilize", "Last run", "Oil", "Torques", "Battery"]) await unfold(page, title);
  await page.getByRole("button", { name: "Link", exact: true }).click();
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  for (const [key, title] of Object.entries(SUMS)) {
    await page.evaluate((key) => { location.hash = key; }, key);
    await line(page, title).waitFor();
  }
  assert.ok(host.asked.every((path) => path.startsWith(FOLDER)), host.asked.join(" "));
  // The browser asks for the icon at every change of address, and a host without caching answers each time.
  const asked = host.asked.filter((path) => !path.includes("/icon-"));
  assert.deepEqual(asked.toSorted(), [...new Set(asked)].toSorted());
  // `clean` wants an empty console and no request that left the origin.
  await clean(page);
});

test("the policy lets no foreign or inline script, style or request through", async () => {
  const page = await openPage(METRIC);
  const policy = await page.locator("meta[http-equiv=Content-Security-Policy]").getAttribute("content");
  assert.doesNotMatch(policy, /unsafe-inline|'unsafe-eval'|\*/);
  assert.match(policy, /default-src 'none'/);
  assert.equal(await page.locator("script:not([src]), style, [style], [onclick], [onload]").count(), 0);
  await page.evaluate(async () => {
    const script = document.createElement("script");
    script.textContent = "window.ran = 1";
    document.body.append(script);
    await fetch("https://example.invalid/").catch(() => {});
  });
  assert.equal(await page.evaluate(() => window.ran), undefined);
  const refused = troublesOf(page).filter((it) => it.includes("The policy refused"));
  assert.ok(refused.some((it) => it.includes("script-src")) && refused.some((it) => it.includes("connect-src")), refused.join("\n"));
  await page.context().close();
});

test("an address opens its line or its quick sum, and one that opens nothing is said", async () => {
  const page = await openPage({ hash: "#layup/oil", ...METRIC });
  const expanded = (title) => line(page, title).getByRole("button", { name: title, exact: true }).getAttribute("aria-expanded");
  assert.equal(await expanded("Oil"), "true");
  assert.equal(await expanded("Battery"), "false");
  await page.evaluate(() => { location.hash = "layup/last-run"; });
  await eventually(async () => assert.equal(await expanded("Last run"), "true"));
  for (const [key, title] of Object.entries(SUMS)) {
    await page.evaluate((key) => { location.hash = key; }, key);
    await page.getByRole("heading", { level: 1, name: title }).waitFor();
  }
  await page.evaluate(() => { location.hash = "nowhere/at-all"; });
  await page.getByText("This address opens nothing here: nowhere/at-all").waitFor();
  await line(page, "Oil").waitFor();
  await clean(page);
});

test("folding a line writes its address without a step in the history", async () => {
  const page = await openPage(METRIC);
  const steps = await page.evaluate(() => history.length);
  await unfold(page, "Oil");
  assert.equal(new URL(page.url()).hash, "#layup/oil");
  await line(page, "Oil").getByRole("button", { name: "Oil", exact: true }).click();
  assert.equal(new URL(page.url()).hash, "#layup");
  assert.equal(await page.evaluate(() => history.length), steps);
  await clean(page);
});

test("back and forward go through the quick sums", async () => {
  const page = await openPage(METRIC);
  const sums = page.getByRole("navigation", { name: "Quick sums" });
  const titles = Object.values(SUMS);
  for (const title of titles) {
    await sums.getByRole("link", { name: title }).click();
    await page.getByRole("heading", { level: 1, name: title }).waitFor();
  }
  for (const title of titles.toReversed().slice(1)) {
    await page.goBack();
    await page.getByRole("heading", { level: 1, name: title }).waitFor();
  }
  await page.goBack();
  await page.getByText("Had a bike here?").waitFor();
  await page.goForward();
  await page.getByRole("heading", { level: 1, name: titles[0] }).waitFor();
  await clean(page);
});

test("a quick sum keeps nothing and starts blank", async () => {
  const page = await openPage({ hash: "#fuel", ...METRIC });
  const fuel = line(page, SUMS.fuel);
  await type(fuel, { "Tank volume": "15", "Fuel in the tank": "3", "Stabilizer label": "1:320" });
  await answers(fuel, { "Fuel to add": /L$/ });
  await page.waitForTimeout(600);
  await page.evaluate(() => dispatchEvent(new Event("pagehide")));
  assert.deepEqual(await stored(page), {});
  await page.getByRole("link", { name: "The whole sheet" }).click();
  await page.getByText("Had a bike here?").waitFor();
  assert.notEqual(await blank(await unfold(page, "Fill up and stabilize"), "Tank volume").inputValue(), "15");
  await page.goBack();
  await line(page, SUMS.fuel).waitFor();
  assert.equal(await blank(line(page, SUMS.fuel), "Tank volume").inputValue(), "");
  await clean(page);
});

test("every hint, label and description belongs to something", async () => {
  const page = await openPage({ hash: "#layup/torques", ...METRIC });
  for (const title of ["Fill up and stabilize", "Last run", "Oil", "Battery"]) await unfold(page, title);
  const loose = await page.evaluate(() => {
    const ids = [...document.querySelectorAll("[id]")].map((it) => it.id);
    const twice = ids.filter((it, at) => ids.indexOf(it) !== at);
    const refers = ["aria-labelledby", "aria-describedby", "for", "list"].flatMap((name) =>
      [...document.querySelectorAll(`[${name}]`)].flatMap((it) => it.getAttribute(name).split(" ")));
    return [...twice, ...refers.filter((it) => !ids.includes(it))];
  });
  assert.deepEqual(loose, []);
  await clean(page);
});

test("loaded again, the page opens where its owner was", async () => {
  const page = await openPage({ ...METRIC });
  const step = page.getByRole("heading", { name: "Tires", exact: true });
  await step.evaluate((it) => it.scrollIntoView({ block: "start" }));
  const before = await page.evaluate(() => scrollY);
  assert.ok(before > 500, `${before} px`);
  await eventually(async () => assert.equal(await page.evaluate(() => history.state), Math.round(before)));
  await page.reload();
  await eventually(async () => assert.ok(Math.abs((await page.evaluate(() => scrollY)) - before) < 2, `${before} ${await page.evaluate(() => [scrollY, history.state, document.body.scrollHeight])}`));
  // Back from another part of the page, which has its own place, it is there again.
  for (let time = 0; time < 3; time += 1) {
    await page.evaluate(() => { location.hash = "#torque"; });
    await eventually(async () => assert.equal(await page.evaluate(() => scrollY), 0));
    await page.goBack();
    await eventually(async () => assert.ok(Math.abs((await page.evaluate(() => scrollY)) - before) < 2, `${before} ${await page.evaluate(() => scrollY)}`));
  }
  await page.evaluate(() => { location.hash = "#fuel"; });
  await eventually(async () => assert.equal(await page.evaluate(() => scrollY), 0));
  await clean(page);
});

test("the first answer is seen before all that stands below it, and nothing that stands is moved", async () => {
  const before = (page) => page.addInitScript(() => {
    window.frames = [];
    window.moved = [];
    new PerformanceObserver((list) => window.moved.push(...list.getEntries().map((it) => it.value))).observe({ type: "layout-shift", buffered: true });
    // What stands in a frame is told behind all callbacks of that frame and before it is painted.
    const look = () => {
      const answered = [...document.querySelectorAll("output")].some((it) => /\d/.test(it.textContent));
      window.frames.push([answered, document.querySelector("ol.sheet") !== null]);
    };
    addEventListener("DOMContentLoaded", () => new ResizeObserver(look).observe(document.body));
  });
  for (const viewport of [{ width: 390, height: 844 }, { width: 1280, height: 900 }]) {
    const page = await openPage({ ...METRIC, viewport, before });
    await page.locator("ol.sheet").waitFor();
    const [frames, moved] = await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(() => done([window.frames, window.moved]), 100))));
    assert.ok(frames.some(([answered, all]) => answered && !all), "a frame with the first answer alone");
    assert.deepEqual(moved, []);
    await clean(page);
  }
});

test("what is typed in stays where it is as the example makes way", async () => {
  // As high as a phone is with its keyboard.
  const page = await openPage({ ...METRIC, viewport: { width: 390, height: 420 } });
  const date = blank(line(page, "Season"), "Park date");
  await date.evaluate((it) => scrollBy(0, it.getBoundingClientRect().top - 140));
  await date.focus();
  const top = () => date.evaluate((it) => it.getBoundingClientRect().top);
  const before = await top();
  await page.keyboard.press("Backspace");
  await page.getByText("Your own bike has begun").waitFor({ state: "attached" });
  await eventually(async () => assert.ok(Math.abs((await top()) - before) < 2, `${before} ${await top()}`));
  await clean(page);
});

test("opened out of sight, where there are no frames, the page is laid out whole", async () => {
  const before = (page) => page.addInitScript(() => {
    Object.defineProperty(Document.prototype, "hidden", { get: () => true });
    Object.defineProperty(Document.prototype, "visibilityState", { get: () => "hidden" });
    window.requestAnimationFrame = () => 0;
  });
  const page = await openPage({ ...METRIC, before });
  await page.locator("ol.sheet").waitFor();
  await clean(page);
});

test("what functions keep in memory while they run takes a part of the room there is", async () => {
  const before = (page) => page.addInitScript(() => {
    for (const way of ["instantiate", "instantiateStreaming"]) {
      const own = WebAssembly[way];
      WebAssembly[way] = async (...all) => {
        const made = await own.apply(WebAssembly, all);
        window.memory = Object.values(made.instance.exports).find((it) => it instanceof WebAssembly.Memory);
        return made;
      };
    }
  });
  const page = await withFasteners(40, { before });
  for (const title of ["Oil", "Torques", "Battery"]) await unfold(page, title);
  await page.getByRole("button", { name: "Link", exact: true }).click();
  // It is taken from its end on, so what was never taken is zeros at its beginning; behind it stand data.
  const free = await page.evaluate(() => new Uint8Array(window.memory.buffer).findIndex((it) => it !== 0));
  assert.ok(free > 112 * 1024 && free < 128 * 1024, `${free} bytes are free`);
  await clean(page);
});
