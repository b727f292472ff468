// The paper: two pages of either size, with everything on them, and a code that brings the bike back.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import jsqr from "jsqr";
import { extractText } from "unpdf";
import { clean, openContext, openPage, stop } from "./harness.mjs";
import { blank, eventually, line } from "./sheet.mjs";

after(stop);

const SIZES = ["A4", "Letter"];
const NAMES = ["Oil drain plug", "Oil filter", "Front axle", "Rear axle", "Axle pinch bolts", "Front caliper bolts", "Rear caliper bolts", "Chain adjuster", "Handlebar clamp", "Spark plug", "Engine sprocket", "Wheel sprocket"];
const METRIC = ["Torque (N·m)", ["25 (22–26)", "20", "50", "55", "20", "25", "22", "16", "24", "12", "45", "33"]];
const US = ["Torque (lbf·ft)", ["18 (16–19)", "15", "37", "40", "15", "18", "16", "12", "18", "9", "33", "24"]];
const october = (page) => page.clock.setFixedTime(new Date("2026-10-30T12:00:00"));

/** A bike of one's own with every line filled in, as the example has them, and these fasteners behind its own. */
async function ownBike(locale, names = NAMES, options = {}) {
  const page = await openPage({ locale, hash: "#layup", before: october, ...options });
  await page.getByRole("button", { name: "Link", exact: true }).click();
  const link = await page.getByLabel("Your link").inputValue();
  await page.getByRole("button", { name: "Link", exact: true }).click();
  await page.evaluate((hash) => { location.hash = hash; }, link.slice(link.indexOf("#")));
  await page.getByRole("button", { name: "Keep as a new bike" }).click();
  await page.evaluate(() => { location.hash = "layup/torques"; });
  const torques = line(page, "Torques");
  await torques.getByRole("button", { name: "The list as a table" }).click();
  const [column, figures] = locale === "en-US" ? US : METRIC;
  const adapter = (at) => (at % 3 ? "none;" : `in line;${locale === "en-US" ? "1.6 in" : "40 mm"}`);
  const rows = names.map((name, at) => `${name};${figures[at % figures.length]};${adapter(at)};${at % 4 || names.length > 12 ? "" : "new washer"}`);
  await torques.getByLabel("Paste a table from a spreadsheet").fill([`Fastener;${column};Adapter;Adapter length;Mind`, ...rows].join("\n"));
  await torques.getByRole("button", { name: `Add ${names.length} fasteners` }).click();
  // The example's own fastener makes room: with it there are thirteen.
  for (const label of ["Torque at the fastener", "Fastener"]) await blank(torques, label).first().fill("");
  await line(page, names.at(-1)).waitFor();
  return page;
}

/** The text of each page, its spaces made plain. */
async function printed(page, format) {
  const { text } = await extractText(new Uint8Array(await page.pdf({ format })));
  return text.map((it) => it.replaceAll(/\s+/g, " "));
}

function has(text, all) {
  for (const it of all) assert.ok(text.includes(it), `${it} in: ${text}`);
}

test("a bike with twelve torques is two pages of either size, with all that the work needs", async () => {
  for (const [locale, unit] of [["en-GB", "N·m"], ["en-US", "lbf·ft"]]) {
    const page = await ownBike(locale);
    await page.getByRole("button", { name: "Garage", exact: true }).click();
    await blank(page.getByRole("banner"), "Bike").fill("Heron 500");
    for (const format of SIZES) {
      const pages = await printed(page, format);
      assert.equal(pages.length, 2, `${format}: ${pages.map((it) => it.length)}`);
      for (const it of pages) has(it, ["Heron 500", "Printed Fri, Oct 30 2026"]);
      const [plan, torques] = pages;
      has(plan, ["Sat, Nov 14 2026", "Sun, Mar 28 2027", "134", "look at the meter Dec 12", "Mon, Dec 14"]);
      has(plan, ["1 Wash and dry", "6 Oil", "14 Battery", "17 Cover", "13 First start", "15 Look again"]);
      has(plan, ["Engine oil: 4 × 1", "Stabilizer to add", "carbon monoxide kills", "Never open the cap of a hot radiator"]);
      has(plan, locale === "en-US" ? ["3.30 US qt", "psi"] : ["3.10 L", "46 mL", "2.58 bar", "2.98 bar"]);
      has(torques, [...NAMES, "Set the wrench to", "Pull square to the handle", "SOURCES", "TM 9-254", "licensed mechanic"]);
      // By hand: 22–26 and the like without an adapter are set as they are, and 25 · 285 / 325 = 21.9 with one.
      has(torques, locale === "en-US" ? ["37 lbf·ft 37 lbf·ft", "18 (16–19) lbf·ft"] : ["50 N·m 50 N·m", "25 (22–26) N·m 21 N·m only with the 40 mm adapter in line", "new washer"]);
      assert.equal(torques.match(new RegExp(` ${unit} \\d+ ${unit}`, "g")).length, 12, torques);
    }
    await clean(page);
  }
});

/** What is on the page while it is printed; taken away again. */
async function onPaper(page, look) {
  await page.emulateMedia({ media: "print" });
  await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
  const seen = await look(page.locator("#paper"));
  await page.evaluate(() => dispatchEvent(new Event("afterprint")));
  await page.emulateMedia({ media: null });
  assert.equal(await page.locator("#paper").count(), 0);
  return seen;
}

/** The text of the code that stands there, as a reader of its own sees it on a picture. */
async function decoded(context, element) {
  const png = (await element.screenshot()).toString("base64");
  const page = await context.newPage();
  const [width, height, dots] = await page.evaluate(async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const { width, height } = image;
    const canvas = Object.assign(document.createElement("canvas"), { width, height }).getContext("2d");
    canvas.drawImage(image, 0, 0);
    return [width, height, [...canvas.getImageData(0, 0, width, height).data]];
  }, png);
  await page.close();
  return jsqr(Uint8ClampedArray.from(dots), width, height)?.data;
}

test("the code is the bike's link, and opens the same bike elsewhere", async () => {
  const look = (context) => async (paper) => [await paper.innerText(), await decoded(context, paper.locator(".code svg"))];
  const [context, another] = [await openContext({ locale: "en-GB", deviceScaleFactor: 3 }), await openContext({ locale: "en-GB", deviceScaleFactor: 3 })];
  const page = await ownBike("en-GB", NAMES, { context });
  const [text, link] = await onPaper(page, look(context));
  await page.getByRole("button", { name: "Link", exact: true }).click();
  assert.equal(link, await page.getByLabel("Your link").inputValue());
  assert.ok(link.length > 300, link);

  const other = await openPage({ context: another, hash: link.slice(link.indexOf("#")), before: october });
  await other.getByRole("button", { name: "Keep as a new bike" }).click();
  await line(other, "Torques").waitFor();
  const [again, same] = await onPaper(other, look(another));
  assert.equal(same, link);
  // Of the names only the usual ones travel; all else is the same to the letter.
  const nameless = (text) => NAMES.reduce((text, it) => text.replaceAll(it, ""), text).replaceAll(/\s+/g, " ");
  assert.equal(nameless(again), nameless(text));
  await clean(other);
  await clean(page);
  await context.close();
  await another.close();
});

test("the example says on each page that it is one; what is not known is left to write on", async () => {
  for (const format of SIZES) {
    const example = await openPage({ locale: "en-GB", before: october });
    const pages = await printed(example, format);
    assert.equal(pages.length, 2);
    for (const it of pages) has(it, ["Alder 640", "Example"]);
    await example.getByRole("button", { name: "Start your own" }).click();
    const form = await printed(example, format);
    assert.equal(form.length, 2);
    has(form[0], ["Tank volume, L:", "1 Wash and dry", "15 Look again"]);
    for (const it of form) assert.ok(!it.includes("Example") && !it.includes("Alder"), it);
    await clean(example);
  }
});

test("a longer list runs on to further pages under its own head, and no row is split", async () => {
  const names = Array.from({ length: 70 }, (_, at) => `Nut no ${at + 1}.`);
  const page = await ownBike("en-GB", names);
  for (const format of SIZES) {
    const pages = await printed(page, format);
    assert.ok(pages.length > 3, `${pages.length}`);
    const listed = pages.filter((it) => /Nut no \d/.test(it));
    for (const it of listed) {
      has(it, ["Set the wrench to", "Printed"]);
      // Each row's figures stand on the page of its name.
      assert.equal(it.match(/Nut no \d+\./g).length, it.match(/ N·m \d+ N·m/g).length);
    }
    for (const name of names) assert.equal(pages.filter((it) => it.includes(name)).length, 1, name);
  }
  await clean(page);
});

test("a quick sum prints as it stands, without what is pressed", async () => {
  const page = await openPage({ locale: "en-GB", hash: "#torque" });
  const [first] = await printed(page, "A4");
  has(first, ["Torque wrench setting", "Wrench length, hand to square drive"]);
  for (const it of ["Wash and dry", "Garage", "The whole sheet"]) assert.ok(!first.includes(it), first);
  await onPaper(page, async (paper) => assert.equal(await paper.count(), 0));
  await clean(page);
});

test("the button asks the browser to print, and paper is black on white in the dark as well", async () => {
  const page = await openPage({ locale: "en-GB", colorScheme: "dark", before: october });
  await page.evaluate(() => { window.print = () => { window.asked = (window.asked ?? 0) + 1; }; });
  await page.getByRole("button", { name: "Print", exact: true }).click();
  await eventually(async () => assert.equal(await page.evaluate(() => window.asked), 1));
  const colors = await onPaper(page, (paper) => paper.evaluate((it) =>
    [...it.querySelectorAll("*"), document.body].flatMap((it) => {
      const { color, backgroundColor } = getComputedStyle(it);
      return [`ink ${color}`, `paper ${backgroundColor}`];
    })));
  assert.deepEqual(new Set(colors), new Set(["ink rgb(0, 0, 0)", "paper rgba(0, 0, 0, 0)", "paper rgb(255, 255, 255)"]));
  await clean(page);
});
