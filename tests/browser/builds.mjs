// Copies of the built page on hosts of their own: as it is, as another build, and what a browser has kept of either.
import assert from "node:assert/strict";
import { createHash } from "node:crypto";
import { cp, mkdtemp, readFile, rename, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { DIST } from "./harness.mjs";
import { eventually } from "./sheet.mjs";
import { serve } from "./server.mjs";

const folders = [];
const hosts = [];

/** A host of the built page for one test alone. */
export async function newHost(folder = DIST) {
  const host = await serve(folder);
  hosts.push(host);
  return host;
}

/** Ends the hosts and removes the copies. */
export async function cleanUp() {
  await Promise.all(hosts.map((host) => host.close().catch(() => {})));
  await Promise.all(folders.map((folder) => rm(folder, { recursive: true })));
}

/** Names of a build's files as its worker lists them. */
export async function filesOf(folder = DIST) {
  const worker = await readFile(join(folder, "sw.js"), "utf8");
  return JSON.parse(worker.match(/\["[^\]]+"\]/)[0]);
}

const digest = async (folder, files) => {
  const hash = createHash("sha256");
  for (const name of files) hash.update(await readFile(join(folder, name)));
  return hash.digest("base64");
};

/**
 * Another build: index.html, boot script and styles say `name` (see `buildOf`), every file that has its content in its name
 * has another one, and the worker is sealed for it.
 */
export async function anotherBuild(name) {
  const folder = await mkdtemp(join(tmpdir(), "torpor-build-"));
  folders.push(folder);
  await cp(DIST, folder, { recursive: true });
  const file = (it) => join(folder, it);
  const text = (it) => readFile(file(it), "utf8");
  const before = await filesOf();
  const worker = await text("sw.js");
  const old = await digest(folder, ["index.html", ...before]);
  assert.ok(worker.includes(old), "the worker holds the digest of its files in their order");
  let index = (await text("index.html")).replace("<html ", `<html data-index=${name} `);
  let sealed = worker;
  const after = before.map((it) => (it === "boot.js" ? it : `${name}-${it}`));
  for (const [at, it] of before.entries()) {
    if (it === after[at]) continue;
    await rename(file(it), file(after[at]));
    index = index.replaceAll(`./${it}`, `./${after[at]}`);
    sealed = sealed.replace(`"${it}"`, `"${after[at]}"`);
  }
  const add = async (part, more) => {
    const it = after.find((it) => it.includes(part));
    await writeFile(file(it), (await text(it)) + more);
  };
  index = index.replace("./boot.js?", `./boot.js?${name}`);
  await add("boot.js", `\ndocument.documentElement.dataset.boot = "${name}";\n`);
  await add(".css", `\n:root { --build: ${name} }\n`);
  await writeFile(file("index.html"), index);
  await writeFile(file("sw.js"), sealed.replace(old, await digest(folder, ["index.html", ...after])));
  return folder;
}

/** Which build each part of an open page is of: the names that `anotherBuild` was given, or "built". */
export async function buildOf(page) {
  return page.evaluate(() => {
    const root = document.documentElement;
    const { index, boot } = root.dataset;
    const css = getComputedStyle(root).getPropertyValue("--build").trim();
    const names = performance.getEntriesByType("resource").map((it) => new URL(it.name).pathname.split("/").at(-1));
    const files = names.filter((it) => /\.(js|wasm|css)$/.test(it) && !["sw.js", "boot.js"].includes(it));
    const from = files.map((it) => (/^(sheet|torpor)-/.test(it) ? "built" : it.split("-")[0]));
    return [...new Set([index ?? "built", boot ?? "built", css || "built", ...from])];
  });
}

/** Waits until a worker keeps the page for days without a network. */
export async function keptOffline(page) {
  await eventually(async () => {
    assert.equal(await page.evaluate(async () => (await navigator.serviceWorker.getRegistration())?.active?.state), "activated");
  }, 15_000);
}

/** The browser's caches and the names in each, from the host's root on. */
export async function cachesOf(page) {
  return page.evaluate(async () => {
    const all = {};
    for (const name of await caches.keys()) {
      all[name] = (await (await caches.open(name)).keys()).map((it) => new URL(it.url).pathname).sort();
    }
    return all;
  });
}
