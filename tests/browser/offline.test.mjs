// Without a network, and from one build to the next: one build's files only, nothing typed lost, nobody else's caches touched.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { anotherBuild, buildOf, cachesOf, cleanUp, filesOf, keptOffline, newHost } from "./builds.mjs";
import { clean, laidOut, openContext, openPage, openProfile, stop, troublesOf } from "./harness.mjs";
import { FOLDER } from "./server.mjs";
import { allAnswers, answers, blank, eventually, kept, line, type, unfold } from "./sheet.mjs";

after(async () => {
  await stop();
  await cleanUp();
});

const METRIC = { locale: "en-GB", workers: true };
const FUEL = "Fill up and stabilize";
const READY = "A new version is ready";
const NOW_OFFLINE = "Works without a network from now on.";

const reload = async (page) => {
  await page.reload();
  await laidOut(page);
};

/** As when the page comes into sight again: it asks for a newer worker. */
const lookedAt = (page) => page.evaluate(() => document.dispatchEvent(new Event("visibilitychange")));

/** A tab whose page comes from its worker. */
async function keptTab(host, context) {
  const page = await openPage({ host, context, hash: "#layup/fuel" });
  await keptOffline(page);
  await reload(page);
  return page;
}

test("after one visit the page works without its host, with the same answers", async () => {
  const host = await newHost();
  const page = await openPage({ host, hash: "#layup/fuel", ...METRIC });
  await page.getByText(NOW_OFFLINE).waitFor();
  await keptOffline(page);
  const times = (name) => host.asked.filter((it) => it === FOLDER + name).length;
  for (const name of ["", ...(await filesOf())]) assert.ok(times(name) <= 2, `${name} once for the page, once for the worker`);
  assert.ok(host.asked.every((it) => it.startsWith(FOLDER)), host.asked.join(" "));
  await page.getByRole("button", { name: "Start your own" }).click();
  await type(line(page, FUEL), { "Tank volume": "15", "Fuel in the tank": "3", "Fill to": "100", "Stabilizer label": "1:320" });
  await answers(line(page, FUEL), { "Stabilizer to add": [46.875, "47 mL"] });
  await kept(page);
  const before = await allAnswers(page);
  await host.close();
  await page.context().setOffline(true);
  await reload(page);
  assert.deepEqual(await allAnswers(page), before);
  assert.equal(await page.getByText(NOW_OFFLINE).isVisible(), false, "said once");
  for (const address of ["index.html#fuel", "?from=elsewhere#fuel", "#fuel"]) {
    await page.goto("about:blank");
    await page.goto(host.url + address);
    await line(page, "Fuel and stabilizer").waitFor();
  }
  await assert.rejects(page.goto(`${host.url}other.html`), /ERR_/, "it answers for its own files only");
  // What the browser itself says of the page that is not there, of the worker that it looks for, of the icon.
  const own = troublesOf(page).filter((it) => !/ERR_INTERNET_DISCONNECTED|ERR_CONNECTION_REFUSED|ERR_FAILED/.test(it));
  assert.deepEqual(own, []);
  await page.context().close();
});

test("a cache holds all files of the build, and nothing else is ever in it", async () => {
  const host = await newHost();
  const page = await keptTab(host, await openContext(METRIC));
  await page.evaluate(() => Promise.all([fetch("robots.txt"), fetch("./", { method: "POST" }), fetch("../")].map((it) => it.catch(() => {}))));
  const all = Object.values(await cachesOf(page));
  assert.deepEqual(all, [["", ...(await filesOf())].map((it) => FOLDER + it).sort()]);
  await page.context().close();
});

test("a new version is offered, the open page stays as it is until then, and what is typed is kept", async () => {
  const host = await newHost();
  const context = await openContext(METRIC);
  const page = await keptTab(host, context);
  await page.getByRole("button", { name: "Start your own" }).click();
  host.folders.set(FOLDER, await anotherBuild("newer"));
  await lookedAt(page);
  await page.getByText(READY).waitFor();
  const asked = host.asked.length;
  const other = await openPage({ host, context, hash: "#oil" });
  assert.deepEqual(await buildOf(other), ["built"], "a tab opened now is of the build that is in use");
  await other.getByText(READY).waitFor();
  await reload(page);
  assert.deepEqual(await buildOf(page), ["built"]);
  assert.deepEqual(host.asked.slice(asked).filter((it) => it !== `${FOLDER}sw.js`), [], "nothing of either build is asked of the host");
  await page.getByText(READY).waitFor();
  let loads = 0;
  page.on("load", () => { loads += 1; });
  await other.evaluate(() => { window.still = true; });
  await type(line(page, FUEL), { "Tank volume": "16,5" });
  await page.getByRole("status").filter({ hasText: READY }).getByRole("button", { name: "Reload" }).click();
  await eventually(async () => assert.deepEqual(await buildOf(page), ["newer"]), 10_000);
  await laidOut(page);
  assert.equal(await blank(await unfold(page, FUEL), "Tank volume").inputValue(), "16,5");
  assert.equal(await page.getByText(READY).isVisible(), false);
  assert.equal(Object.keys(await cachesOf(page)).length, 1, "the cache before is gone");
  await page.waitForTimeout(300);
  assert.equal(loads, 1, "it reloads once");
  assert.equal(await other.evaluate(() => window.still), true, "the other tab is left alone");
  await type(line(other, "Oil fill"), { "Fill with filter": "3.2" });
  // Its own button still brings the new one.
  await other.getByRole("button", { name: "Reload" }).click();
  await eventually(async () => assert.deepEqual(await buildOf(other), ["newer"]), 10_000);
  const old = (await filesOf()).filter((it) => it !== "boot.js");
  assert.deepEqual(host.asked.slice(asked).filter((it) => old.includes(it.slice(FOLDER.length))), []);
  await clean(other);
  await clean(page);
  await context.close();
});

test("a host that is half written brings no new version, and the old one goes on", async () => {
  const host = await newHost();
  const page = await keptTab(host, await openContext(METRIC));
  const before = await cachesOf(page);
  const newer = await anotherBuild("half");
  host.folders.set(FOLDER, newer);
  // One file is still on its way, another has other bytes than the worker was sealed with.
  for (const answer of [(name) => (name.endsWith(".css") ? { status: 404 } : {}), (name) => (name === "index.html" ? { body: "old" } : {})]) {
    host.answer = answer;
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      await registration.update();
      const { installing } = registration;
      if (installing) await new Promise((settled) => installing.addEventListener("statechange", settled));
    });
    assert.equal(await page.getByText(READY).isVisible(), false);
    await reload(page);
    assert.deepEqual(await buildOf(page), ["built"]);
    assert.deepEqual(await cachesOf(page), before);
  }
  host.answer = () => undefined;
  await lookedAt(page);
  await page.getByText(READY).waitFor();
  await page.context().close();
});

test("two copies in folders of one host, one inside of the other, and a neighbor do not touch each other", async () => {
  const host = await newHost();
  const inside = `${FOLDER}inside/`;
  host.folders.set(inside, await anotherBuild("inside"));
  const context = await openContext(METRIC);
  const page = await keptTab(host, context);
  await page.evaluate(async ([address]) => {
    localStorage.setItem("neighbor", "theirs");
    for (const name of ["neighbor", "torpor", `torpor ${new URL(address, location.href).href} from another day`]) {
      await (await caches.open(name)).put("./robots.txt", new Response("theirs"));
    }
  }, [inside]);
  const other = await openPage({ context, host, path: "inside/" });
  assert.deepEqual(await buildOf(other), ["inside"], "the worker above does not answer for it");
  await keptOffline(other);
  const kinds = async () => Object.keys(await cachesOf(page)).map((it) => it.replace(/ \S{44}$/, "").replace(/http:\/\/[^/]*/, "")).sort();
  await eventually(async () => {
    assert.deepEqual(await kinds(), ["neighbor", "torpor", `torpor ${FOLDER}`, `torpor ${inside}`], "of its own folder it clears away what is old");
  }, 10_000);
  host.folders.set(FOLDER, await anotherBuild("outside"));
  await lookedAt(page);
  await page.getByRole("button", { name: "Reload" }).click();
  await eventually(async () => assert.deepEqual(await buildOf(page), ["outside"]), 10_000);
  assert.deepEqual(await kinds(), ["neighbor", "torpor", `torpor ${FOLDER}`, `torpor ${inside}`]);
  assert.equal(await page.evaluate(() => localStorage.getItem("neighbor")), "theirs");
  await host.close();
  await reload(other);
  assert.deepEqual(await buildOf(other), ["inside"]);
  await context.close();
});

test("where no worker is let in the page works and says nothing of it", async () => {
  const before = (page) => page.addInitScript(() => {
    ServiceWorkerContainer.prototype.register = () => Promise.reject(new DOMException("Blocked.", "SecurityError"));
  });
  const page = await openPage({ before, ...METRIC });
  await page.waitForTimeout(300);
  assert.equal(await page.getByText(NOW_OFFLINE).isVisible(), false);
  await clean(page);
});

test("a kept file that has gone bad is asked for anew", async () => {
  const host = await newHost();
  const page = await keptTab(host, await openContext(METRIC));
  await page.evaluate(async () => {
    const cache = await caches.open((await caches.keys())[0]);
    const [wasm] = (await cache.keys()).filter((it) => it.url.endsWith(".wasm"));
    await cache.put(wasm, new Response("bad", { headers: { "content-type": "application/wasm" } }));
  });
  await reload(page);
  assert.deepEqual(await buildOf(page), ["built"]);
  await page.context().close();
});

test("Chromium finds it installable, under names and colors of its own", async () => {
  const context = await openProfile();
  const page = await openPage({ context });
  await keptOffline(page);
  const debug = await page.context().newCDPSession(page);
  assert.deepEqual((await debug.send("Page.getInstallabilityErrors")).installabilityErrors, []);
  const { url, errors, data } = await debug.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const manifest = JSON.parse(data);
  assert.deepEqual([manifest.start_url, manifest.scope, manifest.display], [".", ".", "standalone"]);
  const colors = await page.evaluate(() => ({
    paper: getComputedStyle(document.documentElement).getPropertyValue("--paper").trim(),
    theme: [...document.querySelectorAll("meta[name=theme-color]")].find((it) => matchMedia(it.media).matches).content,
  }));
  assert.deepEqual([colors.theme, manifest.theme_color, manifest.background_color], Array(3).fill(colors.paper));
  for (const icon of manifest.icons) {
    const size = await page.evaluate(async (src) => {
      const image = new Image();
      image.src = src;
      await image.decode();
      return `${image.naturalWidth}x${image.naturalHeight}`;
    }, new URL(icon.src, url).href);
    assert.equal(size, icon.sizes);
  }
  const dark = await openPage({ colorScheme: "dark" });
  const paper = await dark.evaluate(() => [
    getComputedStyle(document.documentElement).getPropertyValue("--paper").trim(),
    [...document.querySelectorAll("meta[name=theme-color]")].find((it) => matchMedia(it.media).matches).content,
  ]);
  assert.equal(paper[0], paper[1]);
  await clean(dark);
  await clean(page);
  await context.close();
});
