// Pictures of the built page, to look at: node tests/browser/shots.mjs [folder]
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openContext, openPage, stop } from "./harness.mjs";
import { line, type, unfold } from "./sheet.mjs";

const folder = process.argv[2] ?? fileURLToPath(new URL("../../target/shots/", import.meta.url));

/** What is taken: where the page opens, and what is done there first. */
const SHOTS = {
  sheet: {},
  torque: { hash: "#torque" },
  oil: { hash: "#oil" },
  fuel: { hash: "#fuel" },
  battery: { hash: "#battery" },
  lines: {
    act: async (page) => {
      for (const title of ["Fill up and stabilize", "Last run", "Oil", "Torques", "Battery"]) await unfold(page, title);
    },
  },
  "torque-filled": {
    hash: "#torque",
    act: (page) =>
      type(line(page, "Torque wrench setting"), {
        "Torque at the fastener": "25 (22–26) N·m", "Adapter length, drive to fastener": "40 mm",
        "Wrench length, hand to square drive": "285 mm", Graduation: "1 N·m",
      }),
  },
  preview: {
    act: async (page) => {
      await page.getByRole("button", { name: "Link", exact: true }).click();
      const link = await page.getByLabel("Your link").inputValue();
      await page.evaluate((fragment) => { location.hash = fragment; }, link.slice(link.indexOf("#")));
      await line(page, "A bike from a link").waitFor();
    },
  },
  refused: {
    hash: "#torque",
    act: (page) =>
      type(line(page, "Torque wrench setting"), {
        "Torque at the fastener": "a lot", "Wrench length, hand to square drive": "1,000", Graduation: "5 V",
      }),
  },
};

await mkdir(folder, { recursive: true });
try {
  for (const colorScheme of ["light", "dark"]) {
    for (const width of [390, 1280]) {
      for (const [name, { hash, act }] of Object.entries(SHOTS)) {
        const context = await openContext({ viewport: { width, height: 844 }, colorScheme });
        const page = await openPage({ context, hash });
        await act?.(page);
        await page.evaluate(() => scrollTo(0, 0));
        const file = join(folder, `${name}-${width}-${colorScheme}.png`);
        await page.screenshot({ path: file, fullPage: true });
        console.log(file);
        await context.close();
      }
    }
  }
} finally {
  await stop();
}
