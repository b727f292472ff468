// Pages with more in them than a test wants to type: many fasteners, a long season, a long logbook.
import assert from "node:assert/strict";
import { openPage } from "./harness.mjs";
import { answers, blank, eventually, line, type, unfold } from "./sheet.mjs";

/** A bike of one's own with so many fasteners kept, the torque line open, all that a wrench needs typed. */
export async function withFasteners(kept, options = {}) {
  const page = await openPage({ hash: "#layup/torques", locale: "en-GB", ...options });
  await page.getByRole("button", { name: "Start your own" }).click();
  const torques = line(page, "Torques");
  const wrench = { Graduation: "1", "Lowest mark": "5", "Highest mark": "60", "Wrench length, hand to square drive": "285" };
  const fastener = { Adapter: ["in line"], "Adapter length, drive to fastener": "40" };
  await type(torques, { ...fastener, ...wrench });
  await torques.getByRole("button", { name: "The list as a table" }).click();
  const row = (_, at) => `Nut ${at + 1};${10 + (at % 30)} (${8 + (at % 30)}–${12 + (at % 30)});in line;40 mm`;
  const table = ["Fastener;Torque (N·m);Adapter;Adapter length", ...Array.from({ length: kept }, row)].join("\n");
  await torques.getByLabel("Paste a table from a spreadsheet").fill(table);
  await torques.getByRole("button", { name: `Add ${kept} fasteners` }).click();
  await torques.getByRole("button", { name: "The list as a table" }).click();
  await answers(line(page, `Nut ${kept}`), { "Set the wrench to": /^\d+ N·m$/ });
  await type(torques, { ...fastener, "Torque at the fastener": "25" });
  return page;
}

/** A bike of one's own that stands for four hundred days in a place with a swing of temperature, the battery line open. */
export async function withLongSeason(options = {}) {
  const page = await openPage({ hash: "#layup/battery", locale: "en-GB", ...options });
  await page.getByRole("button", { name: "Start your own" }).click();
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("2026-11-01");
  await blank(season, "Ride date").fill("2027-12-06");
  await season.getByLabel("Where it stands").selectOption("outdoors");
  const battery = await unfold(page, "Battery");
  await type(battery, { Chemistry: ["sealed, “MF” or AGM"], Capacity: "12", "Key-off draw": "1", "Charge when parked": "95" });
  await battery.getByLabel("Climate").selectOption("winnipeg_mb");
  await answers(battery, { "Charge on ride date": /%/ });
  return page;
}

/** For `before` of `openPage`: it is this time for ever. */
export const at = (time) => (page) => page.clock.setFixedTime(new Date(time));

/** A bike of one's own with both dates of a season. */
export async function ownBike({ time = "2026-11-14T12:00:00", ...options } = {}) {
  const page = await openPage({ locale: "en-GB", hash: "#layup", before: at(time), ...options });
  await page.getByRole("button", { name: "Start your own" }).click();
  const season = page.getByRole("region", { name: "Season", exact: true });
  await blank(season, "Park date").fill("2026-11-14");
  await blank(season, "Ride date").fill("2027-03-28");
  return page;
}

export const book = (page) => page.getByRole("region", { name: "Logbook", exact: true });
export const openBook = (page) => page.getByRole("button", { name: "Logbook", exact: true }).click();

/** The entries of the open logbook that are in sight, by their titles. */
export const titles = (page) => book(page).locator(".rows > li h4 button").allInnerTexts();

/** Opens the logbook and takes ten thousand entries in, one of which has "seldom" in its remarks. */
export async function takeInMany(page) {
  await openBook(page);
  await book(page).getByRole("button", { name: "The logbook as a file" }).click();
  const day = (at) => new Date(Date.UTC(2000, 0, 1 + (at % 9000))).toISOString().slice(0, 10);
  const rows = Array.from({ length: 10_000 }, (_, at) => `${day(at)},Work ${at % 40},${at * 7} km,"Engine oil 3.1 L; bottles to buy 4","${at === 5000 ? "seldom" : "note"} ${at}"`);
  const table = ["Day,What was done,Odometer then,Figures,Remarks", ...rows].join("\n");
  const file = { name: "many.csv", mimeType: "text/csv", buffer: Buffer.from(table) };
  await book(page).getByLabel("Open a CSV or JSON file").setInputFiles(file);
  await book(page).getByText("10000 new").waitFor({ timeout: 60_000 });
  await book(page).getByRole("button", { name: "Add 10000" }).click();
  await eventually(async () => assert.equal((await titles(page)).length, 40), 20_000);
}
