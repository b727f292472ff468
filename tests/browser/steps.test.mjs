// The steps of both sides as they are used: ticked, left out, waited for; the needs list and the calendar file.
import assert from "node:assert/strict";
import { readFile } from "node:fs/promises";
import { after, test } from "node:test";
import { clean, openPage, stop } from "./harness.mjs";
import { blank, eventually, kept, line, tick } from "./sheet.mjs";

after(stop);

const at = (time) => (page) => page.clock.setFixedTime(new Date(time));

async function ownBike(hash, time = "2026-11-14T12:00:00") {
  const page = await openPage({ locale: "en-GB", hash, before: at(time) });
  await page.getByRole("button", { name: "Start your own" }).click();
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("2026-11-14");
  await blank(season, "Ride date").fill("2027-03-28");
  return page;
}

test("a tick stays, a left-out step says why, and both survive a reload", async () => {
  const page = await ownBike("#layup");
  // The season's days are there without a battery's facts.
  await page.getByRole("button", { name: "Calendar file" }).waitFor();
  await tick(page, "Wash and dry").check();
  await page.getByRole("button", { name: "Chain", exact: true }).click();
  const chain = line(page, "Chain");
  // Letter by letter, never left: what was typed is kept at once.
  await chain.getByLabel("Leave it out because").pressSequentially("belt drive ");
  await chain.getByText("Left out: belt drive").waitFor();
  await kept(page);
  await page.reload();
  assert.equal(await tick(page, "Wash and dry").isChecked(), true);
  await line(page, "Chain").getByText("Left out: belt drive").waitFor();
  await tick(page, "Wash and dry").uncheck();
  assert.equal(await tick(page, "Wash and dry").isChecked(), false);
  // Done after all, it is left out no more.
  await tick(page, "Chain").check();
  await line(page, "Chain").getByText("Left out: belt drive").waitFor({ state: "detached" });
  assert.equal(await line(page, "Chain").getByLabel("Leave it out because").inputValue(), "");
  await clean(page);
});

test("the first start and the first ride wait for what comes before them", async () => {
  const page = await ownBike("#wakeup");
  const start = tick(page, "First start");
  assert.equal(await start.isDisabled(), true);
  await line(page, "First start").getByText(/^Waits for: Open exhaust and intake, Fuel, Levels, Battery, measured, Before it moves/).waitFor();
  for (const title of ["Open exhaust and intake", "Fuel", "Levels", "Battery, measured", "Before it moves"]) await tick(page, title).check();
  await eventually(async () => assert.equal(await start.isDisabled(), false));
  await start.check();
  assert.equal(await tick(page, "First ride, short").isDisabled(), true);
  await clean(page);
});

test("from three weeks before the ride the sheet opens on its wake-up side", async () => {
  for (const [time, side] of [["2027-03-06T12:00:00", "Lay-up"], ["2027-03-07T12:00:00", "Wake-up"]]) {
    const page = await ownBike("", time);
    await eventually(async () => assert.equal(await page.getByRole("link", { name: side, exact: true }).getAttribute("aria-current"), "page"));
    await clean(page);
  }
});

test("the example has no boxes to tick, but all its steps", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at("2026-10-01T12:00:00") });
  assert.equal(await page.getByRole("checkbox").count(), 0);
  // Injection: no bowls to drain; all others stand there.
  assert.equal(await page.locator("ol.sheet > li").count(), 17);
  await clean(page);
});

test("the needs list and the calendar file", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at("2026-10-01T12:00:00") });
  await page.getByRole("button", { name: "Needs list" }).click();
  // 3.1 L from bottles of 1 L are four; the others are worked by hand in tests/needs.rs.
  await page.getByText("Engine oil: 4 × 1 L", { exact: true }).waitFor();
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Calendar file" }).click()]);
  assert.equal(download.suggestedFilename(), "season.ics");
  const file = await readFile(await download.path(), "utf8");
  assert.match(file, /^BEGIN:VCALENDAR\r\n/);
  assert.match(file, /DTSTART;VALUE=DATE:20261114\r\n/);
  // Each event has the bike's link, which opens the same bike.
  const link = file.replaceAll("\r\n ", "").match(/^URL:.*(#1\..*)$/m)[1].trim();
  const other = await openPage({ locale: "en-GB", hash: link });
  await other.getByText("Tank volume").first().waitFor();
  await clean(page);
});

test("folding a line again and again keeps next to no memory", async () => {
  const before = async (page) => {
    await at("2026-10-01T12:00:00")(page);
    await page.addInitScript(() => {
      // The packed wasm comes by the first, a plain one by the second.
      for (const way of ["instantiate", "instantiateStreaming"]) {
        const made = WebAssembly[way];
        WebAssembly[way] = async (...all) => {
          const done = await made.apply(WebAssembly, all);
          window.wasmMemory = Object.values(done.instance.exports).find((it) => it instanceof WebAssembly.Memory);
          return done;
        };
      }
    });
  };
  const page = await openPage({ locale: "en-GB", hash: "#layup", before });
  const fold = (times) => page.evaluate(async (times) => {
    const button = document.getElementById("line-battery-title");
    for (let turn = 0; turn < times; turn += 1) {
      button.click();
      await new Promise((next) => setTimeout(next));
    }
    return window.wasmMemory.buffer.byteLength / 1024;
  }, times);
  const first = await fold(100);
  const last = await fold(800);
  // Each fold that left all that it made behind would be 5 kB: 4,000.
  assert.ok(last - first < 1500, `${first} kB, then ${last} kB`);
  await clean(page);
});
