/**
 * `npm run screenshots`: every view at 1280 and 390 pixels, light and dark, and the printed pages, into screenshots/.
 * To be looked at: a view one would not show is a fault. `npm run screenshots -- answer pit` takes these views only.
 * With the pit, README.md's picture of it is taken anew: docs/pit-wall.png.
 */
import { mkdir, rm } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { join } from "node:path";
import type { Page } from "playwright-core";
import { openHarness, openPage, settled } from "../tests/browser/harness.ts";

const all = ["pit", "answer", "inputs", "field", "teach", "seasons", "keep"];
const asked = process.argv.slice(2);
const views = all.filter((name) => asked.length === 0 || asked.includes(name));
const widths = [1280, 390];
const themes = ["light", "dark"];
const readmePicture = fileURLToPath(new URL("../docs/pit-wall.png", import.meta.url));
/** The pit wall with what it is read by; below it stands what README.md does not need. */
const pitWall = { x: 0, y: 0, width: 1280, height: 1090 };
const folder = fileURLToPath(new URL("../screenshots/", import.meta.url));

if (asked.length === 0) await rm(folder, { recursive: true, force: true });
await mkdir(folder, { recursive: true });
const harness = await openHarness();
try {
  for (const width of widths) {
    const context = await harness.newContext({ viewport: { width, height: width > 600 ? 900 : 844 } });
    for (const theme of themes) {
      for (const name of views) {
        const { page, wrong } = await openPage(harness, `#/${name}?theme=${theme}`, context);
        await settled(page);
        await drawn(page);
        const file = `${name}-${width}-${theme}`;
        await shoot(page, file);
        // The other leaves of the field notes; the first lies open.
        for (const leaf of (await page.locator(".field-leaves button").all()).slice(1)) {
          await leaf.click();
          await drawn(page);
          const title = await leaf.innerText();
          await shoot(
            page,
            `${file}-${title
              .toLowerCase()
              .match(/[a-z]+/g)
              ?.join("-")}`,
          );
        }
        for (const line of wrong) process.stdout.write(`${file}: ${line}\n`);
        if (width === 1280 && theme === "light") {
          if (name === "pit") await page.screenshot({ path: readmePicture, fullPage: true, clip: pitWall });
          await page.pdf({
            path: join(folder, `${name}-print.pdf`),
            format: "Letter",
            printBackground: false,
          });
        }
        await page.close();
      }
    }
    await context.close();
  }
  process.stdout.write(`${folder}\n`);
} finally {
  await harness.close();
}

async function shoot(page: Page, file: string): Promise<void> {
  await page.screenshot({ path: join(folder, `${file}.png`), fullPage: true });
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  if (wide > 0) process.stdout.write(`${file}: ${wide} px wider than the screen\n`);
}

/** Charts are drawn a moment after the answer is there. */
async function drawn(page: Page): Promise<void> {
  await page.waitForFunction(() => document.querySelector(".plot:not([data-drawn])") === null);
  await page.waitForTimeout(300);
}
