// The built page in a real browser. Every page that is opened keeps a list of its troubles; `clean` wants it empty.
import assert from "node:assert/strict";
import { existsSync } from "node:fs";
import { readFile } from "node:fs/promises";
import { createRequire } from "node:module";
import { delimiter, join } from "node:path";
import { fileURLToPath } from "node:url";
import { chromium } from "playwright-core";
import { serve } from "./server.mjs";

export const DIST = fileURLToPath(new URL("../../dist/", import.meta.url));
const FLAGS = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  // A page of the browser's own that every new window loads, for up to a second beside what is tested and measured.
  "--disable-features=WebUIOmniboxPopup",
];

const troubles = new WeakMap();
const alone = new WeakSet();
let started;

/** The server and the browser, started once for a test file; `stop` ends them. */
async function start() {
  if (!existsSync(join(DIST, "index.html"))) {
    throw new Error("There is no built page in dist/: run `cargo xtask build` first.");
  }
  const host = await serve(DIST);
  try {
    const browser = await chromium.launch({ executablePath: findChromium(), args: FLAGS });
    return { host, browser };
  } catch (failure) {
    await host.close();
    throw failure;
  }
}

/** Where the page is served, what was asked of the host, and the browser. */
export function running() {
  started ??= start();
  return started;
}

/** To be given to `after` in every test file. */
export async function stop() {
  if (!started) return;
  const { host, browser } = await started;
  await browser.close();
  await host.close();
}

function findChromium() {
  if (process.env.CHROMIUM) return process.env.CHROMIUM;
  const folders = (process.env.PATH ?? "").split(delimiter);
  for (const name of ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]) {
    const found = folders.map((folder) => join(folder, name)).find((path) => existsSync(path));
    if (found) return found;
  }
  throw new Error("No Chromium was found: install one, or set CHROMIUM to where it is.");
}

/**
 * A browser of its own: nothing stored, nothing cached. Pages that share one are tabs of the same person. Without `workers`
 * it is one that has no service workers, so that each file comes over the network, where a test sees it.
 */
export async function openContext({
  viewport = { width: 1280, height: 900 },
  colorScheme = "light",
  locale = "en-US",
  blockStorage = false,
  workers = false,
  ...more
} = {}) {
  const { browser } = await running();
  const context = await browser.newContext({ viewport, colorScheme, locale, ...more });
  // What does not come on a page without a network does not come later.
  context.setDefaultTimeout(10_000);
  await context.addInitScript(() => {
    addEventListener("securitypolicyviolation", (event) => {
      console.error(`The policy refused ${event.violatedDirective}: ${event.blockedURI} ${event.sample}`);
    });
  });
  if (!workers) await context.addInitScript(() => { delete Navigator.prototype.serviceWorker; });
  if (blockStorage) {
    await context.addInitScript(() => {
      const refuse = () => {
        throw new DOMException("Storage is blocked.", "SecurityError");
      };
      Object.defineProperty(window, "localStorage", { get: refuse });
      Object.defineProperty(window, "sessionStorage", { get: refuse });
    });
  }
  return context;
}

/** A browser that is not private, as only such a one installs a page; an empty profile of its own. Whoever opens it closes it. */
export function openProfile() {
  return chromium.launchPersistentContext("", { executablePath: findChromium(), args: FLAGS });
}

/**
 * Opens the page, `hash` ("#torque") included, and waits until the sheet has taken the shell's place. `context` makes
 * it one more tab there; otherwise the options of `openContext` are for a new one. `before` may prepare the page
 * (a route, a clock), `ready: false` does not wait, `host` is another one than that of all tests.
 */
export async function openPage({ path = "", hash = "", context, before, ready = true, host, ...options } = {}) {
  host ??= (await running()).host;
  const page = await (context ?? (await openContext(options))).newPage();
  if (!context) alone.add(page);
  watch(page, new URL(host.url).origin);
  await before?.(page);
  await page.goto(`${host.url}${path}${hash}`);
  if (ready) await laidOut(page);
  return page;
}

/** Waits until the sheet has taken the shell's place, all of it. */
export async function laidOut(page) {
  const rescue = page.locator("#rescue");
  await page.locator("#shell").waitFor({ state: "detached" });
  if (await rescue.isVisible()) {
    assert.fail(["The page stopped while it was being laid out.", ...troubles.get(page)].join("\n"));
  }
  await page.locator("footer:not([hidden])").waitFor({ state: "attached" });
}

function watch(page, origin) {
  const list = [];
  troubles.set(page, list);
  page.on("console", (message) => {
    if (["error", "warning"].includes(message.type())) list.push(`console: ${message.text()}`);
  });
  page.on("pageerror", (error) => list.push(`error: ${error.message}`));
  page.on("requestfailed", (request) => {
    const why = request.failure()?.errorText;
    // A page that goes away or reloads drops what it was still fetching.
    if (why !== "net::ERR_ABORTED") list.push(`failed: ${request.url()} ${why}`);
  });
  page.on("request", (request) => {
    const url = new URL(request.url());
    if (["http:", "https:", "ws:", "wss:"].includes(url.protocol) && url.origin !== origin) {
      list.push(`left the origin: ${url}`);
    }
  });
}

/** What went wrong on this page so far, for tests that want something to. */
export function troublesOf(page) {
  return troubles.get(page);
}

/** Ends a test: nothing in the console, nothing refused, no request that left the origin. Closes the page. */
export async function clean(page) {
  const list = troubles.get(page);
  await (alone.has(page) ? page.context() : page).close();
  assert.deepEqual(list, []);
}

const AXE = createRequire(import.meta.url).resolve("axe-core/axe.min.js");
let axeSource;

/** Holds the page, as it stands, against WCAG 2.2 A and AA as far as a program can tell. */
export async function axe(page) {
  axeSource ??= await readFile(AXE, "utf8");
  // The page's policy refuses a foreign script; the debugger's own evaluation is not under it.
  const debug = await page.context().newCDPSession(page);
  const evaluate = async (expression) => {
    const answer = await debug.send("Runtime.evaluate", { expression, awaitPromise: true, returnByValue: true });
    if (answer.exceptionDetails) throw new Error(answer.exceptionDetails.exception?.description ?? "axe failed");
    return answer.result.value;
  };
  await evaluate(`${axeSource};0`);
  const levels = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22a", "wcag22aa"];
  const options = { runOnly: { type: "tag", values: levels }, resultTypes: ["violations"] };
  const violations = await evaluate(`axe.run(document, ${JSON.stringify(options)}).then((all) => all.violations)`);
  await debug.detach();
  const told = violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes.map((node) => node.target).join("; ")})`);
  assert.deepEqual(told, []);
}

/** The page fits its width; when not, names what sticks out. */
export async function noSidewaysScroll(page) {
  const out = await page.evaluate(() => {
    const root = document.documentElement;
    if (root.scrollWidth <= root.clientWidth) return [];
    const wide = [...document.querySelectorAll("body *")]
      .filter((element) => element.getBoundingClientRect().right > root.clientWidth + 0.5)
      .map((element) => `${element.tagName.toLowerCase()}#${element.id}.${element.className}`);
    return [`${root.scrollWidth} in ${root.clientWidth}`, ...wide.slice(0, 8)];
  });
  assert.deepEqual(out, []);
}
