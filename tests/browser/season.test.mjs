// One season from the first open to the first ride, with the clock set: what a browser may drop in between comes back from the
// calendar's link and the saved logbook.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, test } from "node:test";
import { clean, laidOut, openContext, openPage, running, stop } from "./harness.mjs";
import { answer, blank, eventually, kept, line, shown, stored, tick, type, unfold } from "./sheet.mjs";

after(stop);

const book = (page) => page.getByRole("region", { name: "Logbook", exact: true });

async function saved(page, button) {
  const [file] = await Promise.all([page.waitForEvent("download"), button.click()]);
  return file.path();
}

test("a whole season", async () => {
  const { host } = await running();
  const context = await openContext({ locale: "en-GB" });
  const page = await openPage({ context, before: (page) => page.clock.setFixedTime(new Date("2026-11-10T18:00:00")) });
  const on = (day) => page.clock.setFixedTime(new Date(`${day}T10:00:00`));

  // First open: the example; the first own entry begins an own bike.
  await page.getByText("Example", { exact: true }).waitFor();
  await page.getByRole("button", { name: "Start your own" }).click();
  await type(line(page, "Season"), { "Park date": "2026-11-14", "Ride date": "2027-03-28", "Coldest night": "-24" });
  await line(page, "Season").getByLabel("Where it stands").selectOption("unheated");
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "15", "Fuel in the tank": "5", "Stabilizer label": "30 mL per 10 L" });
  const battery = await unfold(page, "Battery");
  await type(battery, { Chemistry: ["gel"], Capacity: "12", "Charge when parked": "100", "Key-off draw": "1", "Monthly means": "-6 -5 0 6 13 18 21 20 15 9 3 -3" });
  await eventually(async () => assert.match(await shown(battery, "Charge on ride date"), /%/));
  const foretold = await shown(battery, "Resting voltage on ride date");

  // The lay-up, ticked on its day.
  await on("2026-11-14");
  await page.reload();
  await laidOut(page);
  await page.getByRole("button", { name: "Logbook", exact: true }).click();
  await blank(book(page), "Odometer").fill("12345");
  for (const title of ["Wash and dry", "Fill up and stabilize", "Last run", "Close exhaust and intake", "Battery", "Cover"]) await tick(page, title).check();
  await blank(await unfold(page, "Where things lie"), "Where things lie").fill("plug in the pipe, key on the hook");
  await eventually(async () => assert.equal(await book(page).locator(".rows > li").count(), 6));

  // Calendar and logbook are saved.
  const calendar = (await readFile(await saved(page, page.getByRole("button", { name: "Calendar file" })), "utf8")).replaceAll("\r\n ", "");
  assert.match(calendar, /DTSTART;VALUE=DATE:20270328/);
  const link = calendar.match(/^URL:(.*#1\..*)$/m)[1].trim();
  assert.ok(link.startsWith(host.url), link);
  await book(page).getByRole("button", { name: "The logbook as a file" }).click();
  const logbook = await saved(page, book(page).getByRole("button", { name: "Save as JSON" }));
  await kept(page);

  // The browser drops its store over winter.
  await page.evaluate(() => localStorage.clear());
  await page.goto("about:blank");
  await on("2027-03-28");
  await page.goto(link);
  await laidOut(page);
  assert.deepEqual(Object.keys(await stored(page)), []);
  await page.getByRole("button", { name: "Keep as a new bike" }).click();

  // The wake-up side opens by itself, with the same figures; what was closed is to be opened before the start.
  await page.goto(`${host.url}#`);
  await eventually(async () => assert.equal(await page.getByRole("link", { name: "Wake-up", exact: true }).getAttribute("aria-current"), "page"));
  await tick(page, "Open exhaust and intake").waitFor();
  assert.equal(await tick(page, "First start").isDisabled(), true);
  const measured = await unfold(page, "Battery, measured");
  await eventually(async () => assert.equal(await shown(measured, "Resting voltage on ride date"), foretold));
  assert.equal(await answer(measured, "Charge on ride date").count(), 1);

  // The logbook comes back from its file.
  await page.getByRole("button", { name: "Logbook", exact: true }).click();
  await book(page).getByRole("button", { name: "The logbook as a file" }).click();
  await book(page).getByLabel("Open a CSV or JSON file").setInputFiles(logbook);
  await book(page).getByRole("button", { name: "Add 6" }).click();
  await eventually(async () => assert.equal(await book(page).locator(".rows > li").count(), 6));
  await book(page).getByText(/^12345 km · Stabilizer to add 43 mL; /).waitFor();

  // What was ticked in autumn is ticked; what is done now is done in the order of safety.
  await page.goto(`${host.url}#layup`);
  assert.equal(await tick(page, "Close exhaust and intake").isChecked(), true);
  await page.goto(`${host.url}#wakeup`);
  for (const title of ["Open exhaust and intake", "Fuel", "Levels", "Battery, measured", "Before it moves", "First start"]) await tick(page, title).check();
  assert.equal(await tick(page, "First ride, short").isDisabled(), true);
  for (const box of await page.getByRole("checkbox").all()) if (await box.isEnabled()) await box.check();
  await eventually(async () => assert.equal(await tick(page, "First ride, short").isEnabled(), true));
  await tick(page, "First ride, short").check();
  await page.getByText("Out again").waitFor();
  await clean(page);
  await context.close();
});
