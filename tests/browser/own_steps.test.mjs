// Steps of the owner's own: added, ticked, removed, put back, kept, and on the bench view too.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { axe, clean, laidOut, noSidewaysScroll, openPage, stop } from "./harness.mjs";
import { eventually, kept, tick } from "./sheet.mjs";

after(stop);

const at = (page) => page.clock.setFixedTime(new Date("2026-11-14T12:00:00"));
const add = (page) => page.getByLabel("Add a step of your own");
const list = (page) => page.getByRole("list", { name: "Steps of your own" });
const titles = async (page) => (await list(page).getByRole("heading").allTextContents());
const are = (page, want) => eventually(async () => assert.deepEqual(await titles(page), want));

async function ownBike(options = {}) {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at, ...options });
  await page.getByRole("button", { name: "Start your own" }).click();
  return page;
}

test("a step of one's own is added, ticked, and there after a reload", async () => {
  const page = await ownBike();
  await add(page).fill("Grease the center stand; both sides");
  await add(page).press("Enter");
  await are(page, ["Grease the center stand, both sides"]);
  assert.equal(await add(page).inputValue(), "", "free for the next");
  await add(page).fill("Camera off");
  await page.getByRole("button", { name: "Add", exact: true }).click();
  await are(page, ["Grease the center stand, both sides", "Camera off"]);
  // There already, or nothing said.
  for (const again of ["Camera off", "  "]) {
    await add(page).fill(again);
    await add(page).press("Enter");
  }
  assert.equal((await titles(page)).length, 2);
  await tick(page, "Camera off").check();
  await kept(page);
  await page.reload();
  await laidOut(page);
  await are(page, ["Grease the center stand, both sides", "Camera off"]);
  assert.equal(await tick(page, "Camera off").isChecked(), true);
  assert.equal(await tick(page, "Grease the center stand, both sides").isChecked(), false);
  // Its tick is in the logbook like any other, and goes with it.
  await page.getByRole("button", { name: "Logbook", exact: true }).click();
  const logged = page.getByRole("button", { name: "Sat, Nov 14 2026 · Camera off", exact: true });
  await logged.waitFor();
  await tick(page, "Camera off").uncheck();
  await logged.waitFor({ state: "detached" });
  await page.getByRole("button", { name: "Undo", exact: true }).click();
  await logged.waitFor();
  assert.equal(await tick(page, "Camera off").isChecked(), true);
  await page.getByRole("link", { name: "Wake-up", exact: true }).click();
  await are(page, []);
  await clean(page);
});

test("removing one leaves the others' ticks, and it is taken back where it was, ticked", async () => {
  const page = await ownBike();
  for (const title of ["One", "Two", "Three"]) {
    await add(page).fill(title);
    await add(page).press("Enter");
  }
  await tick(page, "Two").check();
  await tick(page, "Three").check();
  await page.getByRole("button", { name: "Remove Two" }).click();
  await are(page, ["One", "Three"]);
  assert.equal(await tick(page, "Three").isChecked(), true);
  await page.getByText("Two is removed.").waitFor();
  await page.getByRole("button", { name: "Undo" }).click();
  await are(page, ["One", "Two", "Three"]);
  assert.equal(await tick(page, "Two").isChecked(), true);
  await page.getByRole("button", { name: "Remove One" }).click();
  await are(page, ["Two", "Three"]);
  await kept(page);
  await page.reload();
  await laidOut(page);
  await are(page, ["Two", "Three"]);
  await clean(page);
});

test("over the example it starts one's own bike", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#wakeup", before: at });
  await add(page).fill("Camera on");
  await add(page).press("Enter");
  await are(page, ["Camera on"]);
  await page.getByRole("heading", { name: "Your bike", exact: true }).waitFor();
  assert.equal(await page.getByText("Alder 640").count(), 0);
  await clean(page);
});

test("where all letters are used up the page says so", async () => {
  const page = await ownBike();
  const most = Number(await add(page).getAttribute("maxlength"));
  await add(page).fill("x".repeat(most));
  await add(page).press("Enter");
  await page.getByText("No room for more on this side").waitFor();
  await page.getByRole("button", { name: /^Remove xxx/ }).click();
  await page.getByText("No room for more on this side").waitFor({ state: "hidden" });
  await clean(page);
});

test("they come last on the bench view, with the same tick", async () => {
  const page = await ownBike();
  await add(page).fill("Camera off");
  await add(page).press("Enter");
  await kept(page);
  await page.evaluate(() => { location.hash = "#bench/layup/cover"; });
  await page.getByRole("button", { name: "Next", exact: true }).click();
  const heading = page.getByRole("heading", { level: 1 });
  await eventually(async () => assert.equal(await heading.textContent(), "Lay-up 19 of 19 Camera off"));
  await tick(page, "Camera off").check();
  await page.reload();
  await laidOut(page);
  await eventually(async () => assert.equal(await heading.textContent(), "Lay-up 19 of 19 Camera off"));
  assert.equal(await page.getByRole("button", { name: "Next", exact: true }).isDisabled(), true);
  await page.getByRole("link", { name: "Back to the sheet" }).click();
  await eventually(async () => assert.equal(await tick(page, "Camera off").isChecked(), true));
  await clean(page);
});

test("the rules, light and dark, and 320 px wide", async () => {
  const page = await ownBike({ viewport: { width: 320, height: 640 } });
  for (const title of ["Grease the center stand and whatever else squeaks in spring", "W".repeat(60)]) {
    await add(page).fill(title);
    await add(page).press("Enter");
  }
  await tick(page, "W".repeat(60)).check();
  for (const colorScheme of ["light", "dark"]) {
    await page.emulateMedia({ colorScheme });
    await axe(page);
  }
  await noSidewaysScroll(page);
  await clean(page);
});
