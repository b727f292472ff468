import assert from "node:assert/strict";
import { after, test } from "node:test";
import { axe, clean, noSidewaysScroll, openPage, running, stop, troublesOf } from "./harness.mjs";
import { FOLDER } from "./server.mjs";

after(stop);

test("the sheet takes the shell's place under a sub-path, each file asked for once", async () => {
  const { host } = await running();
  host.asked.length = 0;
  const page = await openPage();
  assert.equal(await page.locator("#shell").count(), 0);
  assert.equal(await page.locator("#rescue").isVisible(), false);
  assert.ok(host.asked.every((path) => path.startsWith(FOLDER)), host.asked.join(" "));
  assert.deepEqual(host.asked.toSorted(), [...new Set(host.asked)].toSorted());
  await clean(page);
});

test("the sheet fits a narrow phone and passes the automatic accessibility rules", async () => {
  for (const colorScheme of ["light", "dark"]) {
    const page = await openPage({ viewport: { width: 320, height: 640 }, colorScheme });
    await noSidewaysScroll(page);
    await axe(page);
    await clean(page);
  }
});

test("without its wasm the page offers what is stored, of its own entries only", async () => {
  const page = await openPage({
    ready: false,
    before: async (page) => {
      await page.route("**/*.wasm", (route) => route.fulfill({ status: 404 }));
      await page.addInitScript(() => {
        localStorage.setItem("torpor.bike", "kept");
        localStorage.setItem("neighbor", "not ours");
      });
    },
  });
  await page.getByRole("button", { name: "Copy what is stored" }).click();
  const text = await page.getByLabel("What is stored").inputValue();
  assert.deepEqual(JSON.parse(text), { "torpor.bike": "kept" });
  await axe(page);
  assert.notDeepEqual(troublesOf(page), []);
});

const BROKEN = {
  "a wasm that is not there": ["**/*.wasm", (route) => route.fulfill({ status: 404 })],
  "a script that is not there": ["**/torpor-*.js", (route) => route.fulfill({ status: 404 })],
  "a wasm cut short": ["**/*.wasm", (route, bytes) => route.fulfill({ body: bytes.subarray(0, bytes.length - 1) })],
  "a wasm of zeros": ["**/*.wasm", (route, bytes) => route.fulfill({ body: Buffer.alloc(bytes.length) })],
  "another file in the wasm’s place": ["**/*.wasm", (route) => route.fulfill({ body: "<!DOCTYPE html>\n".repeat(999) })],
};

for (const [what, [files, answer]] of Object.entries(BROKEN)) test(`${what} shows the rescue panel`, async () => {
  const page = await openPage({
    ready: false,
    before: (page) => page.route(files, async (route) => answer(route, await (await route.fetch()).body())),
  });
  await page.getByRole("heading", { name: "The page stopped." }).waitFor();
  await page.getByRole("button", { name: "Copy what is stored" }).waitFor();
  assert.notDeepEqual(troublesOf(page), []);
});

// A panic ends in a trap. In the page the smallest module that does nothing else: one exported function, `f`, whose body
// is `unreachable`.
const trap = (way) => {
  const head = [0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00];
  const type = [0x01, 0x04, 0x01, 0x60, 0x00, 0x00];
  const rest = [0x03, 0x02, 0x01, 0x00, 0x07, 0x05, 0x01, 0x01, 0x66, 0x00, 0x00, 0x0a, 0x05, 0x01, 0x03, 0x00, 0x00, 0x0b];
  const { f } = new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array([...head, ...type, ...rest]))).exports;
  const button = document.createElement("button");
  button.addEventListener("click", () => f());
  const ways = {
    "an event": () => button.click(),
    "a microtask": () => queueMicrotask(() => f()),
    "what follows a promise": () => void Promise.resolve().then(() => f()),
  };
  ways[way]();
};

for (const way of ["an event", "a microtask", "what follows a promise"]) test(`a trap in ${way} shows the rescue panel`, async () => {
  const page = await openPage();
  await page.evaluate(trap, way);
  await page.getByRole("heading", { name: "The page stopped." }).waitFor();
  assert.deepEqual(troublesOf(page), ["error: unreachable"]);
});

test("a page that stops says so and says what it cannot read", async () => {
  const page = await openPage({ blockStorage: true });
  await page.evaluate(trap, "an event");
  await page.getByRole("heading", { name: "The page stopped." }).waitFor();
  await page.getByRole("button", { name: "Copy what is stored" }).click();
  await page.getByText("does not let the page read its store (SecurityError)").waitFor();
  await page.getByRole("button", { name: "Reload" }).waitFor();
});
