// Pictures of the built page, to look at: node tests/browser/shots.mjs [folder]
import { mkdir } from "node:fs/promises";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { openContext, openPage, stop } from "./harness.mjs";

const folder = process.argv[2] ?? fileURLToPath(new URL("../../target/shots/", import.meta.url));
await mkdir(folder, { recursive: true });
try {
  for (const colorScheme of ["light", "dark"]) {
    for (const width of [390, 1280]) {
      const context = await openContext({ viewport: { width, height: 844 }, colorScheme });
      for (const hash of ["", "#torque", "#oil", "#fuel", "#battery"]) {
        const page = await openPage({ context, hash });
        const file = join(folder, `${hash.slice(1) || "sheet"}-${width}-${colorScheme}.png`);
        await page.screenshot({ path: file, fullPage: true });
        console.log(file);
        await page.close();
      }
      await context.close();
    }
  }
} finally {
  await stop();
}
