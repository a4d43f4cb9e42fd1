import { readFileSync } from "node:fs";
import { openHarness, openTab, settled } from "../tests/browser/harness.ts";
const [, , file, route, out, ...looks] = process.argv;
const scenario = JSON.parse(readFileSync(file!, "utf8"));
const h = await openHarness();
for (const look of looks.length ? looks : ["light-1280", "dark-390"]) {
  const [theme, width] = look.split("-");
  const tab = await openTab(h, {
    route: `#/${route}?theme=${theme}`,
    scenario,
    options: { viewport: { width: Number(width), height: 900 } },
  });
  const t = Date.now();
  await settled(tab.page);
  console.log(look, "settled", Date.now() - t);
  await tab.page.waitForTimeout(500);
  const wide = await tab.page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  console.log("wider", wide, tab.wrong);
  await tab.page.screenshot({
    path: `${out}-${look}.png`,
    clip: { x: 0, y: 0, width: Number(width), height: Number(process.env.H ?? 2200) },
    fullPage: true,
  });
  await tab.close();
}
await h.close();
