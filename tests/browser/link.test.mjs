// The bike as a link: what it carries, what it leaves at home, and what comes of one that was tampered with.
import assert from "node:assert/strict";
import { after, test } from "node:test";
import { axe, clean, noSidewaysScroll, openPage, running, stop } from "./harness.mjs";
import { allAnswers, answers, blank, eventually, kept, line, stored, type, unfold } from "./sheet.mjs";

after(stop);

const METRIC = { locale: "en-GB" };
const LINES = ["Fill up and stabilize", "Last run", "Oil", "Torques", "Battery"];
const KEEP = "Keep as a new bike";

/** A bike with something on every line, two fasteners, and names of its own. */
async function wholeBike() {
  const page = await openPage(METRIC);
  await page.getByRole("button", { name: "Start your own" }).click();
  const texts = [
    { "Tank volume": "4.2 gal", "Fuel in the tank": "1,1 gal", "Stabilizer label": "30 mL per 10 L", "Fill to": "95" },
    { "Fuel supply": ["carburetor"], "Line and rail": "50–100 mL", "Bowls, all together": "200", "Fuel consumption": "49 mpg" },
    { "Oil change": ["with filter"], "Fill with filter": "3.55", "Fill without filter": "3300 mL", "Between the marks": "0.3", "Bottle size": "1", "Oil on the shelf": "0" },
    { Adapter: ["in line"], "Torque at the fastener": "25 (22–26)", "Adapter length, drive to fastener": "40", "Wrench length, hand to square drive": "285", Graduation: "1", Fastener: "Left one with the scratch" },
    { Chemistry: ["gel"], Capacity: "12", "Charge when parked": "90–100", "Key-off draw": "about 1", "Monthly means": "5" },
  ];
  for (const [at, title] of LINES.entries()) await type(await unfold(page, title), texts[at]);
  await line(page, "Torques").getByRole("button", { name: "Keep this fastener" }).click();
  await type(line(page, "Torques"), { ...texts[3], "Torque at the fastener": "18 ft-lb", Fastener: "Axle nut" });
  await type(line(page, "Season"), { "Park date": "2026-11-14", "Ride date": "2027-03-28", "Coldest night": "-12" });
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByLabel("Bike", { exact: true }).fill("Quiet Juniper");
  return page;
}

async function linkOf(page, names = false) {
  const button = page.getByRole("button", { name: "Link", exact: true });
  if ((await button.getAttribute("aria-expanded")) !== "true") await button.click();
  await page.getByLabel("Send what you wrote, too: names, own steps, reasons, places").setChecked(names);
  return page.getByLabel("Your link").inputValue();
}

const fragmentOf = (link) => link.slice(link.indexOf("#"));
const nothing = async (page) => assert.deepEqual(await stored(page), {});

let made;
/** Links of the whole bike without and with names, and its answers; made once. */
function whole() {
  made ??= (async () => {
    const page = await wholeBike();
    const links = { plain: await linkOf(page, false), named: await linkOf(page, true) };
    const results = await allAnswers(page);
    await clean(page);
    return { ...links, results };
  })();
  return made;
}

test("a link opens as a preview and keeps nothing, then the same answers stand there", async () => {
  const { plain, results } = await whole();
  const { host } = await running();
  assert.ok(plain.startsWith(`${host.url}#1.`), plain);
  const page = await openPage({ hash: fragmentOf(plain), ...METRIC });
  const preview = line(page, "A bike from a link");
  await preview.getByText("Nothing is kept yet").waitFor();
  assert.match(await preview.textContent(), /Tank volume4\.2 US gal|Tank volume4\.2 gal/);
  assert.match(await preview.textContent(), /Torque list1/);
  await preview.getByText("check each against the manual").waitFor();
  await nothing(page);
  await preview.getByRole("button", { name: KEEP }).click();
  for (const title of LINES) await unfold(page, title);
  const fasteners = (list) => list.map((it) => it.replaceAll("\u00a0", " "));
  await eventually(async () => assert.deepEqual(fasteners(await allAnswers(page)), fasteners(results)));
  assert.doesNotMatch(page.url(), /#1\./, "another’s figures do not stay in the address");
  await kept(page);
  await clean(page);
});

test("names leave only when they are chosen to", async () => {
  const { plain, named } = await whole();
  const bytes = (link) => Buffer.from(fragmentOf(link).slice(3), "base64url").toString("latin1");
  for (const name of ["Quiet Juniper", "Left one with the scratch"]) {
    assert.ok(!bytes(plain).includes(name), `${name} stays`);
    assert.ok(bytes(named).includes(name), `${name} travels`);
  }
  const page = await openPage({ hash: fragmentOf(named), ...METRIC });
  await line(page, "A bike from a link").getByText("Quiet Juniper").waitFor();
  await page.getByRole("button", { name: "Throw the link away" }).click();
  await page.getByText("Had a bike here?").waitFor();
  await nothing(page);
  await clean(page);
});

test("a link pasted into the open page, as an address or into the field, is previewed too", async () => {
  const { plain } = await whole();
  const page = await openPage(METRIC);
  await page.evaluate((fragment) => { location.hash = fragment; }, fragmentOf(plain));
  await line(page, "A bike from a link").waitFor();
  await nothing(page);
  await page.getByRole("button", { name: "Throw the link away" }).click();
  await page.getByRole("button", { name: "Paste a link" }).click();
  const field = page.getByLabel("Paste a link you were sent").first();
  await field.fill(plain.slice(0, -4));
  await page.getByRole("button", { name: "Look at it" }).first().click();
  await page.getByRole("alert").getByText("copy the whole of it, from # to its end").or(page.getByRole("alert").getByText("was altered on its way")).first().waitFor();
  await field.fill(`  ${plain}\n`);
  await page.getByRole("button", { name: "Look at it" }).first().click();
  await line(page, "A bike from a link").waitFor();
  await nothing(page);
  await clean(page);
});

test("a received bike stands beside one's own and changes nothing of it", async () => {
  const { plain } = await whole();
  const page = await openPage({ hash: "#layup/fuel", ...METRIC });
  await page.getByRole("button", { name: "Start your own" }).click();
  await type(line(page, "Fill up and stabilize"), { "Tank volume": "16", "Fuel in the tank": "1", "Stabilizer label": "1:320" });
  await kept(page);
  const before = await stored(page);
  await page.evaluate((fragment) => { location.hash = fragment; }, fragmentOf(plain));
  await line(page, "A bike from a link").waitFor();
  assert.deepEqual(await stored(page), before);
  await page.getByRole("button", { name: KEEP }).click();
  await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(line(page, "Fill up and stabilize"), "Tank volume").inputValue(), "4.2 gal");
  assert.equal(await blank(line(page, "Fill up and stabilize"), "Stabilizer label").inputValue(), "1:320", "the own garage stays");
  const since = await stored(page);
  for (const [key, text] of Object.entries(before)) {
    if (/^torpor\.(bike|season)\./.test(key)) assert.equal(since[key], text, key);
  }
  await clean(page);
});

test("hostile fragments are told apart from a bike, and change nothing", async () => {
  const { plain } = await whole();
  const good = fragmentOf(plain);
  const swap = (at) => `${good.slice(0, at)}${good[at] === "A" ? "B" : "A"}${good.slice(at + 1)}`;
  const page = await openPage({ hash: "#layup/fuel", ...METRIC });
  await page.getByRole("button", { name: "Start your own" }).click();
  await type(line(page, "Fill up and stabilize"), { "Tank volume": "16" });
  await kept(page);
  const before = await stored(page);
  const cases = [
    ["truncated", good.slice(0, good.length >> 1), /cut off or altered|was altered/],
    ["one letter altered", swap(20), /was altered on its way/],
    ["its last letter altered", swap(good.length - 2), /was altered on its way|cut off or altered/],
    ["doubled", good + good.slice(3), /cut off or altered|was altered|does not hold/],
    ["empty", "#1.", /cut off or altered/],
    ["no base64url", "#1.<img src=x onerror=alert(1)>", /cut off or altered/],
    ["of a newer page", "#2.AAAA", /made by a newer Torpor/],
    ["of a page far newer", "#99999999999999999999.AAAA", /newer Torpor|opens nothing here/],
    ["17 kB", ["#1.", "A", 17_000], /far longer than a bike’s/],
    ["10 MB", ["#1.", "A", 10_000_000], /far longer than a bike’s/],
    ["1 MB of no link", ["#", "x", 1_000_000], /opens nothing here/],
    ["random", "#q7#/..%00\u202e💣", /opens nothing here/],
  ];
  for (const [name, fragment, said] of cases) {
    await page.evaluate((it) => { location.hash = Array.isArray(it) ? it[0] + it[1].repeat(it[2]) : it; }, fragment);
    await eventually(async () => assert.match((await page.locator("main").textContent()).slice(0, 2000), said, name), 8000);
    assert.equal(await page.getByRole("button", { name: KEEP }).count(), 0, name);
    assert.deepEqual(await stored(page), before, name);
    await page.evaluate(() => { location.hash = "#layup"; });
    await line(page, "Fill up and stabilize").waitFor();
  }
  assert.equal(await page.locator("#rescue").isVisible(), false);
  await unfold(page, "Fill up and stabilize");
  assert.equal(await blank(line(page, "Fill up and stabilize"), "Tank volume").inputValue(), "16");
  await clean(page);
});

test("a script as a name is a text and runs nothing", async () => {
  const name = "<img src=x onerror=\"window.ran=1\"><script>window.ran=1</script>";
  const first = await openPage(METRIC);
  await first.getByRole("button", { name: "Start your own" }).click();
  await first.getByRole("button", { name: "Garage", exact: true }).click();
  await first.getByLabel("Bike", { exact: true }).fill(name);
  await type(await unfold(first, "Torques"), { Adapter: ["none"], "Torque at the fastener": "25", Fastener: name });
  await line(first, "Torques").getByRole("button", { name: "Keep this fastener" }).click();
  await first.getByRole("heading", { name }).first().waitFor();
  const link = await linkOf(first, true);
  assert.equal(await first.evaluate(() => window.ran), undefined);
  await clean(first);
  const page = await openPage({ hash: fragmentOf(link), ...METRIC });
  await line(page, "A bike from a link").getByText(name).first().waitFor();
  await page.getByRole("button", { name: KEEP }).click();
  await page.getByRole("heading", { name }).first().waitFor();
  await page.getByRole("button", { name: "Garage", exact: true }).click();
  await page.getByRole("listitem").getByText(name).first().waitFor();
  assert.equal(await page.evaluate(() => window.ran), undefined);
  assert.equal(await page.locator("main img, main script").count(), 0);
  await clean(page);
});

/** A bike with a few facts, and what a second browser made of its link. */
async function twoHands() {
  const first = await openPage({ hash: "#layup", ...METRIC });
  await first.getByRole("button", { name: "Start your own" }).click();
  await type(await unfold(first, "Fill up and stabilize"), { "Tank volume": "16", "Fuel in the tank": "4" });
  await kept(first);
  return { first, sent: fragmentOf(await linkOf(first)) };
}

const tank = async (page) => blank(await unfold(page, "Fill up and stabilize"), "Tank volume").inputValue();
const withoutTimes = (all) => Object.keys(all).sort();
const button = (page, name) => page.getByRole("button", { name, exact: true });
const open = (page, fragment) => page.evaluate((it) => { location.hash = it; }, fragment);

/** No step of the history has the link: going back and forward never shows it. */
async function noLinkBehind(page) {
  assert.doesNotMatch(page.url(), /#1\./);
  await page.evaluate(() => history.back());
  await page.waitForTimeout(300);
  assert.doesNotMatch(page.url(), /#1\./, "one step back");
  await page.evaluate(() => history.forward());
  await page.waitForTimeout(300);
  assert.doesNotMatch(page.url(), /#1\./, "and forward again");
}

test("the preview says what differs, what only one of them has, and how much is the same", async () => {
  const { first, sent } = await twoHands();
  const { plain } = await whole();
  await type(line(first, "Fill up and stabilize"), { "Tank volume": "15.5" });
  await type(await unfold(first, "Oil"), { "Between the marks": "0.4" });
  await kept(first);
  const before = await stored(first);
  await open(first, sent);
  const preview = line(first, "A bike from a link");
  await preview.getByText(", the same bike.").waitFor();
  const text = (await preview.innerText()).replaceAll("\u00a0", " ").replace(/\s+/g, " ");
  assert.match(text, /Different Tank volume here 15\.5 L in the link 16 L/i);
  assert.match(text, /Only here .*Between the marks 0\.4 L/i);
  assert.match(text, /1 fact is the same/);
  assert.ok(text.indexOf("Replace mine") > text.indexOf("1 fact is the same"), "what can be done comes after what it is");
  assert.doesNotMatch(text, /Fuel in the tank/);
  await preview.getByText("1 fact is the same").click();
  await preview.getByText("Fuel in the tank").waitFor();
  await axe(first);
  await first.setViewportSize({ width: 320, height: 640 });
  await noSidewaysScroll(first);
  assert.deepEqual(await stored(first), before);
  await button(first, "Throw the link away").click();
  await line(first, "Fill up and stabilize").waitFor();
  await noLinkBehind(first);
  await open(first, fragmentOf(plain));
  await line(first, "A bike from a link").getByText("it may be another one").waitFor();
  await noSidewaysScroll(first);
  await clean(first);
});

test("replaced, the bike has what the link says and keeps the rest; undo and a copy bring it back", async () => {
  const { first, sent } = await twoHands();
  await type(line(first, "Fill up and stabilize"), { "Tank volume": "15.5" });
  await type(await unfold(first, "Oil"), { "Between the marks": "0.4" });
  await button(first, "Garage").click();
  await first.getByLabel("Bike", { exact: true }).fill("Quiet Juniper");
  await kept(first);
  await open(first, sent);
  await button(first, "Replace mine").click();
  await first.getByText("Quiet Juniper has what the link says.").waitFor();
  assert.equal(await tank(first), "16");
  assert.equal(await blank(await unfold(first, "Oil"), "Between the marks").inputValue(), "0.4");
  await noLinkBehind(first);
  await kept(first);
  assert.equal(Object.keys(await stored(first)).filter((it) => it.startsWith("torpor.bike.")).length, 2, "a copy");
  // Typed since: it stays when the rest is taken back.
  await type(line(first, "Oil"), { "Between the marks": "0.5" });
  await button(first, "Undo").click();
  await eventually(async () => assert.equal(await tank(first), "15.5"));
  assert.equal(await blank(await unfold(first, "Oil"), "Between the marks").inputValue(), "0.5");
  await kept(first);

  // Once more, and now for good: each copy in the archive is the bike as it was, its season with it.
  await open(first, sent);
  await button(first, "Replace mine").click();
  await first.getByText("Quiet Juniper has what the link says.").waitFor();
  await kept(first);
  await first.reload();
  await line(first, "Fill up and stabilize").waitFor();
  assert.equal(await tank(first), "16");
  await button(first, "Garage").click();
  await button(first, "Archived").click();
  const copies = first.getByRole("listitem").filter({ hasText: "Quiet Juniper, before the link" });
  assert.equal(await copies.count(), 2);
  await copies.first().getByRole("button", { name: /Bring back/ }).click();
  await copies.filter({ has: first.getByRole("button", { name: /^Open/ }) }).getByRole("button", { name: /^Open/ }).click();
  await eventually(async () => assert.equal(await tank(first), "15.5"));
  assert.equal(await blank(line(first, "Fill up and stabilize"), "Fuel in the tank").inputValue(), "4");
  await clean(first);
});

test("kept beside a bike of the same name, it has another one", async () => {
  const { named } = await whole();
  const page = await openPage({ hash: fragmentOf(named), ...METRIC });
  await button(page, KEEP).click();
  await page.getByRole("heading", { name: "Quiet Juniper", exact: true }).waitFor();
  await kept(page);
  await page.evaluate((fragment) => { location.hash = fragment; }, fragmentOf(named));
  await line(page, "A bike from a link").waitFor();
  await button(page, KEEP).click();
  await page.getByRole("heading", { name: "Quiet Juniper (from a link)", exact: true }).waitFor();
  await clean(page);
});

test("a bike that is not on the sheet is found by its number and replaced in its own place", async () => {
  const { first, sent } = await twoHands();
  await button(first, "Garage").click();
  await first.getByLabel("Bike", { exact: true }).fill("Quiet Juniper");
  await kept(first);
  await button(first, "New bike").click();
  await type(await unfold(first, "Fill up and stabilize"), { "Tank volume": "9" });
  await kept(first);
  await open(first, sent);
  await line(first, "A bike from a link").getByText("Compared with Quiet Juniper, the same bike").waitFor();
  await button(first, "Replace mine").click();
  await first.getByRole("heading", { name: "Quiet Juniper" }).waitFor();
  assert.equal(await tank(first), "16");
  await button(first, "Undo").waitFor();
  await clean(first);
});

test("only looked at, nothing is kept: not what is typed, not after a reload; mine comes back", async () => {
  const { plain } = await whole();
  const page = await openPage({ hash: "#layup/fuel", ...METRIC });
  await button(page, "Start your own").click();
  await type(line(page, "Fill up and stabilize"), { "Tank volume": "16" });
  await kept(page);
  const before = await stored(page);
  await open(page, fragmentOf(plain));
  await button(page, "Look without keeping").click();
  const notice = page.getByText("Only looked at: nothing of it is kept");
  await notice.waitFor();
  await noLinkBehind(page);
  assert.equal(await tank(page), "4.2 gal");
  await type(line(page, "Fill up and stabilize"), { "Tank volume": "5 gal" });
  await page.getByRole("checkbox", { name: "Done: Wash and dry" }).check();
  await axe(page);
  await page.waitForTimeout(700);
  await page.evaluate(() => dispatchEvent(new Event("pagehide")));
  assert.deepEqual(await stored(page), before);
  await open(page, "#torque");
  await notice.waitFor();
  await open(page, "#layup");
  assert.equal(await tank(page), "5 gal", "what is typed stays until it is left");
  await page.setViewportSize({ width: 320, height: 640 });
  await noSidewaysScroll(page);
  await button(page, "Back to mine").click();
  await eventually(async () => assert.equal(await tank(page), "16"));
  assert.equal(await notice.count(), 0);
  assert.equal(await page.getByRole("checkbox", { name: "Done: Wash and dry" }).isChecked(), false);
  await page.waitForTimeout(700);
  assert.deepEqual(withoutTimes(await stored(page)), withoutTimes(before));

  await open(page, fragmentOf(plain));
  await button(page, "Look without keeping").click();
  await notice.waitFor();
  await page.reload();
  await line(page, "Fill up and stabilize").waitFor();
  assert.equal(await notice.count(), 0);
  assert.equal(await tank(page), "16");

  await open(page, fragmentOf(plain));
  await button(page, "Look without keeping").click();
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "6 gal" });
  await button(page, KEEP).click();
  await eventually(async () => assert.equal(await notice.count(), 0));
  await kept(page);
  await page.reload();
  await line(page, "Fill up and stabilize").waitFor();
  assert.equal(await tank(page), "6 gal", "kept with what was typed");
  await clean(page);
});

test("looking from the example leads back to the example", async () => {
  const { plain } = await whole();
  const page = await openPage({ hash: fragmentOf(plain), ...METRIC });
  assert.equal(await button(page, "Replace mine").count(), 0);
  await button(page, "Look without keeping").click();
  await button(page, "Throw the link away").click();
  await page.getByText("Had a bike here?").waitFor();
  await nothing(page);
  await clean(page);
});

test("without a store all three ways work, and none loses the bike on the sheet", async () => {
  const { plain } = await whole();
  const page = await openPage({ hash: "#layup/fuel", blockStorage: true, ...METRIC });
  await button(page, "Start your own").click();
  await type(line(page, "Fill up and stabilize"), { "Tank volume": "16" });
  await page.getByRole("checkbox", { name: "Done: Wash and dry" }).check();
  const mine = async () => {
    await eventually(async () => assert.equal(await tank(page), "16"));
    assert.equal(await page.getByRole("checkbox", { name: "Done: Wash and dry" }).isChecked(), true);
    if ((await button(page, "Logbook").getAttribute("aria-expanded")) !== "true") await button(page, "Logbook").click();
    await line(page, "Logbook").getByRole("region", { name: /Wash and dry/ }).waitFor();
  };
  await open(page, fragmentOf(plain));
  await button(page, "Look without keeping").click();
  assert.equal(await tank(page), "4.2 gal");
  await button(page, "Back to mine").click();
  await mine();
  await open(page, fragmentOf(plain));
  await page.getByText("Undo alone takes it back").waitFor();
  await button(page, "Replace mine").click();
  await eventually(async () => assert.equal(await tank(page), "4.2 gal"));
  await button(page, "Undo").click();
  await mine();
  await open(page, fragmentOf(plain));
  await button(page, KEEP).click();
  await eventually(async () => assert.equal(await tank(page), "4.2 gal"));
  await button(page, "Undo").click();
  await mine();
  await clean(page);
});

test("a figure that no blank takes is shown as refused, and is not written over mine", async () => {
  const { first } = await twoHands();
  const { first: other } = await twoHands();
  await type(line(other, "Fill up and stabilize"), { "Tank volume": "9000" });
  const sent = fragmentOf(await linkOf(other));
  await clean(other);
  await open(first, sent);
  const preview = line(first, "A bike from a link");
  await preview.getByText("refused: has to be more than 0 L and at most 100 L").waitFor();
  await button(first, "Replace mine").click();
  assert.equal(await tank(first), "16");
  await clean(first);
});

test("more than a link takes is said, with what to do instead", async () => {
  const page = await openPage(METRIC);
  await button(page, "Start your own").click();
  await type(await unfold(page, "Fill up and stabilize"), { "Tank volume": "16" });
  await button(page, "Garage").click();
  await page.getByLabel("Bike", { exact: true }).fill("ü".repeat(400));
  await linkOf(page, true);
  const said = page.getByRole("status").filter({ hasText: "more than a link takes (666 characters)" });
  await said.waitFor();
  assert.equal(await page.getByLabel("Your link").inputValue(), "");
  await linkOf(page, false);
  await said.waitFor({ state: "detached" });
  assert.match(await page.getByLabel("Your link").inputValue(), /#1\.\S+$/);
  await clean(page);
});

test("figures of a kept link say so on the sheet and at the bench, until their owner says that they are right", async () => {
  const link = await linkOf(await wholeBike());
  const page = await openPage({ ...METRIC, hash: fragmentOf(link) });
  await page.getByRole("button", { name: KEEP }).click();
  const mark = page.getByText(/Figures from a link, .*: check each against the manual/);
  await mark.waitFor();
  const atBench = async (count) => {
    await page.evaluate(() => { location.hash = "#bench/layup/oil"; });
    await page.locator(".bench h1").waitFor();
    await eventually(async () => assert.equal(await page.locator(".bench").getByText(/Figures from a link/).count(), count));
    await page.evaluate(() => { location.hash = "#layup"; });
    await line(page, "Season").waitFor();
  };
  await atBench(1);
  await page.getByRole("button", { name: "I have checked them" }).click();
  await mark.waitFor({ state: "detached" });
  await atBench(0);
  await clean(page);
});
