import { existsSync, readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { readJson } from "../../src/scenario/read/readJson.ts";
import { cardNames, type CardName } from "../../web/state/view.ts";
import {
  faultsSeen,
  lastComparison,
  lookAt,
  openCard,
  pageOf,
  patience,
  settled,
  typeAt,
  unfoldAll,
} from "./harness.ts";

const demoText = readFileSync(
  new URL("../../shared/scenarios/sorghum-over-plough-pan.json", import.meta.url),
  "utf8",
);
const demo = readJson(demoText, "demo") as Record<string, unknown>;
const { evidence: _, ...undug } = demo;
const small = { ...undug, ensemble: { years: 12, seed: 1 } };
const withoutFallow = {
  ...small,
  fallow: undefined,
  cases: [{ name: "as it is" }, { name: "deeper", rootingDepth: "+2 in" }],
};
const fixture = (name: string) =>
  readFileSync(new URL(`../fixtures/weather/${name}`, import.meta.url), "utf8");

type Kept = Record<string, never> & {
  soil: { layers: Record<string, string>[] };
  cases: Record<string, unknown>[];
  weather: Record<string, unknown>;
};

const open = pageOf("inputs", small);
/** In a shared tab where other tests begin with the same scenario. */
async function opened(scenario: unknown = small, card?: CardName) {
  const { page, wrong, close } = await open({
    scenario,
    query: card === undefined ? "" : `?card=${card}`,
    shared: scenario === small || scenario === withoutFallow,
  });
  return { page, wrong, done: close };
}

const field = (page: Page, path: string) => page.locator(`[data-path="${path}"]`);
const textOf = (page: Page, path: string) => field(page, path).locator("input").inputValue();
const undo = (page: Page) => page.getByRole("button", { name: /Undo/ }).click();

/** The scenario as the page keeps it. */
async function kept(page: Page): Promise<Kept> {
  await page.waitForTimeout(500); // it is kept a moment after the last change
  return page.evaluate(() => {
    const key = `rootfront.work.${sessionStorage.getItem("rootfront.tab")}`;
    return (JSON.parse(localStorage.getItem(key) ?? "{}") as { scenario: never }).scenario;
  });
}

/** Drops a file as from a folder of the system. */
async function drop(page: Page, place: string, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content!], fileName!, { type: "text/csv" }));
      return transfer;
    },
    [name, text],
  );
  await page.locator(`${place} .file-drop`).dispatchEvent("drop", { dataTransfer: data });
}

/** A year of daily weather for a file that has to be read whole. */
function inventedYear(): string {
  const rows = Array.from({ length: 366 }, (_, day) => {
    const date = new Date(Date.UTC(2020, 0, 1 + day)).toISOString().slice(0, 10);
    return `${date},${day % 6 === 0 ? 8 : 0},${20 + (day % 10)},${5 + (day % 7)}`;
  });
  return ["date,rain_mm,tmax_C,tmin_C", ...rows].join("\n");
}

describe("a quantity", () => {
  test("in inches and in millimetres gives the same answer", async () => {
    const { page, wrong, done } = await opened();
    await typeAt(page, "soil.layers[1].bottom", "14 in");
    await expect.poll(() => page.locator(".layer > legend").nth(1).textContent()).toContain("6 to 14 in");
    await settled(page);
    const inches = await lastComparison(page);
    await typeAt(page, "soil.layers[1].bottom", "355.6 mm");
    await page.waitForTimeout(400);
    await settled(page);
    expect(await lastComparison(page)).toEqual(inches);
    expect(wrong).toEqual([]);
    await done();
  });

  test("typed without a unit gets the one shown, and is seen with it", async () => {
    const { page, wrong, done } = await opened();
    const leave = async (path: string, text: string) => {
      await typeAt(page, path, text);
      expect(await textOf(page, path)).toBe(text);
      await field(page, path).locator("input").blur();
      return textOf(page, path);
    };
    expect(await leave("soil.layers[1].bottom", "14")).toBe("14 in");
    expect((await kept(page)).soil.layers[1]!["bottom"]).toBe("14 in");
    await undo(page);
    expect(await textOf(page, "soil.layers[1].bottom")).toBe("10 in");
    expect(await leave("surface.residueCover", "40")).toBe("40 %");
    expect(await leave("surface.residueCover", "0.4")).toBe("0.4");
    expect(await field(page, "surface.residueCover").locator(".field-bare").textContent()).toContain(
      "counts as 40 %",
    );
    expect(await leave("surface.residueCover", "40")).toBe("40 %");
    expect(await leave("soil.layers[1].bulkDensity", "1.5")).toBe("1.5 g/cm^3");
    expect(await leave("weather.annualRain", "12, 15")).toBe("12 in, 15 in");
    await page.getByRole("radio", { name: "mm · kg" }).check();
    expect(await leave("soil.layers[1].bottom", "300")).toBe("300 mm");
    expect(await leave("weather.annualRain", "300..350")).toBe("300..350 mm");
    await page.waitForTimeout(400);
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    expect(await page.locator(".field-bare").count()).toBe(0);
    expect(wrong).toEqual([]);
    await done();
  });

  test("without a unit in a file keeps the file's, says what it counts as, and how to mend it", async () => {
    const soil = structuredClone((small as unknown as Kept).soil) as { layers: Record<string, unknown>[] };
    soil.layers[1]!["bottom"] = "14";
    const { page, done } = await opened({ ...small, soil }, "soil");
    await expect
      .poll(() => field(page, "soil.layers[1].bottom").locator(".field-bare").textContent())
      .toMatch(/counts as mm/);
    await field(page, "soil.layers[1].bottom").getByRole("button", { name: "Make it 14 in" }).click();
    expect(await textOf(page, "soil.layers[1].bottom")).toBe("14 in");
    await done();
  });

  test("that is wrong is told beside it and on top, and the last good answer stays, marked stale", async () => {
    const { page, wrong, done } = await opened();
    const before = await page.locator(".answer-now p").last().textContent();
    await typeAt(page, "surface.residueCover", "half of it");
    const told = field(page, "surface.residueCover").getByRole("alert");
    await expect.poll(() => told.textContent()).toMatch(/found "half of it"/);
    expect(await page.locator(".answer-now .stale-mark").count()).toBe(1);
    expect(await page.locator(".answer-now p").last().textContent()).toBe(before);
    expect(await page.locator("#inputs-surface > summary").textContent()).toMatch(/1 to mend/);
    await page.locator(".problem-list").getByRole("button", { name: "Surface: residue cover" }).click();
    const focused = await page.evaluate(() =>
      document.activeElement?.closest("[data-path]")?.getAttribute("data-path"),
    );
    expect(focused).toBe("surface.residueCover");
    await page.reload();
    await expect.poll(() => textOf(page, "surface.residueCover")).toBe("half of it");
    await expect.poll(() => told.count(), patience).toBe(1);
    expect(wrong).toEqual([]);
    await done();
  });

  test("a problem is told in words in every view, as a way to its field", async () => {
    const { page, wrong, done } = await opened({
      ...small,
      surface: { snowCatch: "much" },
      money: { price: "a lot" },
    });
    await page.getByRole("link", { name: "Answer", exact: true }).click();
    const banner = page.locator(".banner-wrong");
    await expect.poll(() => banner.count()).toBe(1);
    expect(await banner.textContent()).toContain("Surface: snow caught by stubble");
    expect(await banner.textContent()).not.toContain("snowCatch");
    await banner.getByRole("link").click();
    const at = () =>
      page.evaluate(() => document.activeElement?.closest("[data-path]")?.getAttribute("data-path"));
    await expect.poll(at).toBe("surface.snowCatch");
    expect(wrong).toEqual([]);
    await done();
  });

  test("a problem in what is folded away opens it", async () => {
    const { page, done } = await opened({ ...small, surface: { snowCatch: "much" } }, "surface");
    await page.locator("#inputs-surface summary", { hasText: "Snow" }).click(); // open so far, as something is written there
    expect(await field(page, "surface.snowCatch").isVisible()).toBe(false);
    await page
      .locator(".problem-list")
      .getByRole("button", { name: "Surface: snow caught by stubble" })
      .click();
    expect(await field(page, "surface.snowCatch").isVisible()).toBe(true);
    await done();
  });

  test("left out shows its default in the chosen units and where it comes from; what is typed is not rewritten", async () => {
    const { page, done } = await opened();
    const said = field(page, "ensemble.deepBelow").locator(".field-default");
    expect(await said.textContent()).toBe("If left empty: 24 in (our choice)");
    await page.getByRole("radio", { name: "mm · kg" }).check();
    await expect.poll(() => said.textContent()).toBe("If left empty: 610 mm (our choice)");
    expect(await textOf(page, "soil.layers[0].bottom")).toBe("6 in");
    expect(await field(page, "soil.layers[0].bottom").textContent()).toContain("≈ 152 mm");
    expect(await page.locator(".layer > legend").first().textContent()).toContain("0 to 152 mm");
    await done();
  });
});

describe("layers", () => {
  test("are added, split, joined and removed, each one step of undo", async () => {
    const { page, wrong, done } = await opened(small, "soil");
    const names = async () => {
      await settled(page);
      return (await page.locator(".layer > legend").allTextContents()).map((text) =>
        text.replace(/ \d+ to .*$/, ""),
      );
    };
    const tool = (layer: number, name: string) =>
      page.locator(".layer").nth(layer).getByRole("button", { name });
    const first = ["topsoil", "plough pan", "subsoil", "deep loess"];
    expect(await names()).toEqual(first);
    await page.getByRole("button", { name: "Add a layer below" }).click();
    expect(await names()).toEqual([...first, "layer 5"]);
    await undo(page);
    const { cases: cases0 } = await kept(page);
    await tool(1, "Split in two").click();
    expect(await names()).toEqual([
      "topsoil",
      "plough pan, upper",
      "plough pan, lower",
      "subsoil",
      "deep loess",
    ]);
    const { soil, cases } = await kept(page);
    expect(soil.layers.map(({ bottom }) => bottom)).toEqual(["6 in", "8 in", "10 in", "40 in", "96 in"]);
    expect(JSON.stringify(cases[1])).toContain("plough pan, lower");
    expect(await page.locator(".problem-list").count()).toBe(0);
    await tool(1, "Join with the next").click();
    expect(await names()).toEqual(first);
    expect(JSON.stringify((await kept(page)).cases[1])).toBe(JSON.stringify(cases0[1]));
    await undo(page);
    await undo(page);
    expect(await names()).toEqual(first);
    await tool(3, "Remove").click();
    expect(await names()).toEqual(first.slice(0, 3));
    await page.keyboard.press("Control+z");
    await expect.poll(names).toEqual(first);
    await page.keyboard.press("Control+y");
    await expect.poll(names).toEqual(first.slice(0, 3));
    expect(wrong).toEqual([]);
    await done();
  });

  test("renamed take the cases that name them along", async () => {
    const { page, done } = await opened();
    await typeAt(page, "soil.layers[1].name", "hard pan");
    await expect
      .poll(() => page.locator(".case-said").nth(1).textContent())
      .toContain("hard pan: bulk density");
    expect(await page.locator(".problem-list").count()).toBe(0);
    await done();
  });

  test("take a density from the marks of their texture, by mark and by ruler", async () => {
    const { page, done } = await opened(small, "soil");
    const ruler = page.locator(".layer").nth(1).locator(".ruler");
    await ruler.getByRole("button", { name: /half pace at/ }).click();
    expect(await textOf(page, "soil.layers[1].bulkDensity")).toBe("1.60 g/cm^3");
    await expect.poll(() => ruler.locator("strong").textContent()).toBe("50 %");
    await ruler.getByRole("slider").focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => textOf(page, "soil.layers[1].bulkDensity")).toBe("1.61 g/cm^3");
    await page.locator(".layer").nth(1).locator("summary", { hasText: "Penetrometer" }).click();
    await typeAt(page, "soil.layers[1].penetrationResistance", "300 psi");
    await expect.poll(() => ruler.textContent()).toContain("The penetrometer reading decides");
    await done();
  });

  test("say their depth one way: writing the thickness takes the lower edge out", async () => {
    const { page, done } = await opened();
    // Open already: the demo gives this layer its organic matter, and what is written is never folded away.
    await typeAt(page, "soil.layers[1].thickness", "5 in");
    await expect.poll(() => textOf(page, "soil.layers[1].bottom")).toBe("");
    await expect
      .poll(() => field(page, "soil.layers[1].bottom").locator("input").getAttribute("placeholder"))
      .toBe("11 in, worked out");
    await done();
  });

  test("come from a survey's file, with its components as buttons, and are taken over", async () => {
    const csv = [
      "compname,cokey,areasymbol,musym,hzname,hzdept_r,hzdepb_r,sandtotal_r,claytotal_r,dbthirdbar_r",
      "Invented,11,XX001,Aa,H1,0,20,40,20,1.4",
      "Invented,11,XX001,Aa,H2,20,150,35,25,1.5",
      "Made-up,12,XX001,Bb,H1,0,150,30,25,1.45",
    ].join("\n");
    const { page, wrong, done } = await opened(withoutFallow, "soil");
    await page.getByRole("radio", { name: /survey's or laboratory's file/ }).check();
    await drop(page, "#inputs-soil", "soil.csv", csv);
    await page.getByRole("button", { name: /Invented/ }).click();
    await expect
      .poll(() => page.locator(".read-layers").textContent())
      .toContain("H1: 0 to 7.9 in, loam, 1.40 g/cm³");
    await page.getByRole("button", { name: "Take these layers over" }).click();
    await expect.poll(() => textOf(page, "soil.layers[1].bulkDensity")).toBe("1.5 g/cm^3");
    expect(await textOf(page, "soil.layers[1].sand")).toBe("35 %"); // a figure that is written is never folded away
    expect(await textOf(page, "soil.layers[1].organicMatter")).toBe("");
    await page.waitForTimeout(400);
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    expect(wrong).toEqual([]);
    await done();
  });
});

test("an edge that a typed thickness takes out is there again when the thickness is emptied", async () => {
  const { page, wrong, done } = await opened();
  const before = await textOf(page, "soil.layers[1].bottom");
  expect(before).toBe("10 in");
  await typeAt(page, "soil.layers[1].thickness", "x");
  expect(await textOf(page, "soil.layers[1].bottom")).toBe("");
  await typeAt(page, "soil.layers[1].thickness", "");
  expect(await textOf(page, "soil.layers[1].bottom")).toBe(before);
  await page.waitForTimeout(400);
  await settled(page);
  expect(await page.locator(".problem-list").count()).toBe(0);
  expect(wrong).toEqual([]);
  await done();
});

test("a crop that fits neither counts nor price can be answered without them, in one step of undo", async () => {
  const { page, wrong, done } = await opened({ ...demo, ensemble: { years: 12, seed: 1 } }, "crop");
  await page.getByLabel("Crops we have numbers of").selectOption("sunflower");
  await page.waitForTimeout(400);
  await settled(page);
  const out = page.locator(".problem-list").getByRole("button", { name: /^Answer without/ });
  expect(await out.textContent()).toBe("Answer without what was counted and the money");
  await page.locator(".problem-list").getByRole("button", { name: "Money: price" }).click();
  await field(page, "money.price").locator("input:focus").waitFor();
  await page.getByRole("link", { name: "Inputs" }).click();
  await out.click();
  await settled(page);
  expect(await page.locator(".problem-list").count()).toBe(0);
  expect((await lastComparison(page)).cases).toHaveLength(3);
  await undo(page);
  expect(((await kept(page)) as Record<string, unknown>)["money"]).toEqual(demo["money"]);
  expect(wrong).toEqual([]);
  await done();
});

test("water at the start changes its way and comes back as it was", async () => {
  const { page, done } = await opened();
  await openCard(page, "start");
  await page.getByRole("radio", { name: "By push probe" }).check();
  expect(await textOf(page, "soil.startingWater.moistDepth")).toBe("30 in");
  await page.getByRole("radio", { name: "Layer by layer" }).check();
  expect(await textOf(page, "soil.layers[2].water")).toBe("50 % of available");
  await typeAt(page, "soil.layers[2].water", "1.2 in available");
  await page.waitForTimeout(400);
  await settled(page);
  expect(await page.locator(".problem-list").count()).toBe(0);
  await page.getByRole("radio", { name: "A share everywhere" }).check();
  expect(await textOf(page, "soil.startingWater.share")).toBe("45 %");
  await page.getByRole("radio", { name: "Layer by layer" }).check();
  expect(await textOf(page, "soil.layers[2].water")).toBe("1.2 in available");
  expect(await page.locator("#inputs-start .caution").textContent()).toContain("buried lines");
  await done();
});

test("water at the start from cores is said, can be left and taken up again", async () => {
  const core = { wetMass: "512 g", dryMass: "430 g", diameter: "50 mm", length: "100 mm" };
  const ground = (small as Record<string, unknown>)["soil"] as { readonly layers: readonly object[] };
  const layers = ground.layers.map((layer, l) => (l === 0 ? { ...layer, cores: [core] } : layer));
  const soil = { ...ground, layers, startingWater: { from: "cores", shareBelow: "40 %" } };
  const { page, wrong, done } = await opened({ ...small, soil });
  await openCard(page, "start");
  const way = page.locator("#inputs-start");
  expect(await way.getByRole("radio", { name: "From cores" }).isChecked()).toBe(true);
  expect(await textOf(page, "soil.startingWater.shareBelow")).toBe("40 %");
  await way.getByRole("radio", { name: "A share everywhere" }).check();
  await page.waitForTimeout(400);
  await settled(page);
  expect(await page.locator(".problem-list").count()).toBe(0);
  await way.getByRole("radio", { name: "From cores" }).check();
  expect(await textOf(page, "soil.startingWater.shareBelow")).toBe("40 %");
  await page.waitForTimeout(400);
  await settled(page);
  expect(await page.locator(".problem-list").count()).toBe(0);
  await way.getByRole("link", { name: "In the field" }).click();
  await page.getByRole("heading", { name: "Soil samples" }).waitFor();
  expect(wrong).toEqual([]);
  await done();
});

describe("weather", () => {
  test("of two files dropped one after the other the last one stands, however large the first", async () => {
    const { page, wrong, done } = await opened(withoutFallow, "weather");
    await page.getByRole("radio", { name: "A station's record" }).check();
    await page.waitForTimeout(400);
    await settled(page);
    // Nothing is wrong yet: a file has still to be chosen.
    expect(await field(page, "weather.record").getByRole("alert").count()).toBe(0);
    const text = fixture("invented-plain.csv");
    await page.evaluate((good) => {
      const place = document.querySelector("#inputs-weather .file-drop")!;
      const drop = (name: string, content: string) => {
        const dataTransfer = new DataTransfer();
        dataTransfer.items.add(new File([content], name, { type: "text/csv" }));
        place.dispatchEvent(new DragEvent("drop", { dataTransfer, bubbles: true, cancelable: true }));
      };
      drop("first-and-large.csv", "date,rain_mm\n".padEnd(40_000_000, "x"));
      drop("second.csv", good);
    }, text);
    await expect.poll(async () => (await kept(page)).weather["record"], patience).toBe("second.csv");
    await page.waitForTimeout(1500);
    expect((await kept(page)).weather["record"]).toBe("second.csv");
    expect(wrong).toEqual([]);
    await done();
  });

  test("from a dropped record says what it holds, answers with it, and is there after a reload", async () => {
    const { page, wrong, done } = await opened(withoutFallow, "weather");
    await page.getByRole("radio", { name: "A station's record" }).check();
    await drop(page, "#inputs-weather", "invented-year.csv", inventedYear());
    await expect
      .poll(() => page.locator(".held").textContent())
      .toContain("2020-01-01 to 2020-12-31, 366 days, 1 complete year");
    await page.waitForTimeout(400);
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    expect((await lastComparison(page)).method.sowingYears).toBe(1);
    await page.reload();
    await settled(page);
    await expect.poll(() => page.locator(".held").count()).toBe(1);
    expect(wrong).toEqual([]);
    await done();
  });

  const station = new URL("../../../shared/data/uscrn-2020-goodwell-ok.csv", import.meta.url);
  test.skipIf(!existsSync(station))(
    "from a real station's file (skipped where ../shared/data is absent)",
    async () => {
      const { page, wrong, done } = await opened(withoutFallow, "weather");
      await page.getByRole("radio", { name: "A station's record" }).check();
      await drop(page, "#inputs-weather", "uscrn-2020-goodwell-ok.csv", readFileSync(station, "utf8"));
      await expect.poll(() => page.locator(".held").textContent()).toContain("53182");
      await page.waitForTimeout(400);
      await settled(page);
      expect(await page.locator(".problem-list").count()).toBe(0);
      expect((await lastComparison(page)).method.rain).toContain("record");
      expect(wrong).toEqual([]);
      await done();
    },
  );

  test("asks for station and units with buttons", async () => {
    const { page, done } = await opened(withoutFallow, "weather");
    await page.getByRole("radio", { name: "A station's record" }).check();
    const name = "invented-ghcn-summaries-two-stations.csv";
    await page
      .locator("#inputs-weather input[type=file]")
      .setInputFiles({ name, mimeType: "text/csv", buffer: Buffer.from(fixture(name)) });
    await page.getByRole("button", { name: /XXC00000001/ }).click();
    await page.getByRole("button", { name: "mm and °C", exact: true }).click();
    await expect.poll(() => page.locator(".held").textContent()).toContain("INVENTED EAST");
    expect((await kept(page)).weather).toMatchObject({
      record: name,
      station: "XXC00000001",
      units: "metric",
    });
    await done();
  });

  test("from a bad file tells its line, keeps the last good answer, and is undone", async () => {
    const { page, wrong, done } = await opened(withoutFallow, "weather");
    const before = await page.locator(".answer-now p").last().textContent();
    await page.getByRole("radio", { name: "A station's record" }).check();
    await drop(
      page,
      "#inputs-weather",
      "bad.csv",
      "date,rain_mm,tmax_C,tmin_C\n2020-01-01,3,12,1\n2020-13-01,much,12,1\n",
    );
    await expect
      .poll(() => field(page, "weather.record").getByRole("alert").textContent())
      .toMatch(/bad\.csv|2020-13-01/);
    expect(await page.locator(".answer-now .stale-mark").count()).toBe(1);
    expect(await page.locator(".answer-now p").last().textContent()).toBe(before);
    await undo(page);
    await undo(page);
    await expect.poll(() => page.locator(".problem-list").count()).toBe(0);
    expect(wrong).toEqual([]);
    await done();
  });

  test("from monthly normals pasted out of a spreadsheet", async () => {
    const { page, wrong, done } = await opened(withoutFallow, "weather");
    await page.getByRole("radio", { name: "Monthly normals" }).check();
    await page.waitForTimeout(400);
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    const cell = field(page, "weather.monthlyNormals.rain[0]").locator("input");
    await cell.focus();
    await page.evaluate(() => {
      const data = new DataTransfer();
      data.setData(
        "text/plain",
        Array.from({ length: 12 }, (_, m) => `${(m + 1) / 10}\t${m + 1}`).join("\n"),
      );
      document.activeElement?.dispatchEvent(
        new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
      );
    });
    expect(await textOf(page, "weather.monthlyNormals.rain[11]")).toBe("1.2 in");
    expect(await textOf(page, "weather.monthlyNormals.wetDays[4]")).toBe("5 days");
    await cell.fill("0.7");
    await cell.blur();
    expect(await cell.inputValue()).toBe("0.7 in");
    await page.waitForTimeout(400);
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    await page.getByRole("radio", { name: "A pattern and a total" }).check();
    await page.getByRole("radio", { name: "Monthly normals" }).check();
    expect(await cell.inputValue()).toBe("0.7 in");
    expect(wrong).toEqual([]);
    await done();
  });

  test("takes a total, a list and a range", async () => {
    const { page, done } = await opened();
    for (const [text, totals] of [
      ["13 in", 1],
      ["12 in, 15 in", 2],
      ["300..350 mm", 3],
    ] as const) {
      await typeAt(page, "weather.annualRain", text);
      await page.waitForTimeout(400);
      await settled(page);
      expect((await lastComparison(page)).byRainTotal).toHaveLength(totals);
      expect(await textOf(page, "weather.annualRain")).toBe(text);
    }
    await done();
  });
});

describe("cases", () => {
  test("with a soil of their own leave the field's own curve numbers alone", async () => {
    const layers = [{ name: "plough pan", saturatedConductivity: "0.01 in/h" }];
    const { page, done } = await opened(
      {
        ...withoutFallow,
        cases: [{ name: "as it is" }, { name: "wheel track", soil: { layers } }],
      },
      "cases",
    );
    const said = () => field(page, "surface.curveNumber").locator(".field-default").textContent();
    const withCase = await said();
    expect(withCase).toMatch(/^If left empty: \d\d(\.\d)? fallow, \d\d(\.\d)? crop$/);
    await page.locator(".case").nth(1).getByRole("button", { name: "Remove" }).click();
    await settled(page);
    expect(await said()).toBe(withCase);
    await done();
  });

  test("removed takes what was measured of it along, and one undo brings both back", async () => {
    const { page, wrong, done } = await opened({ ...small, evidence: demo["evidence"] }, "cases");
    const evidenceOf = async () =>
      JSON.stringify(((await kept(page)) as Record<string, unknown>)["evidence"]);
    expect(await evidenceOf()).toContain("pan loosened");
    await page.locator(".case").nth(1).getByRole("button", { name: "Remove" }).click();
    expect(await evidenceOf()).not.toContain("pan loosened");
    expect(await evidenceOf()).toContain("over the pan");
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    expect((await lastComparison(page)).cases).toHaveLength(2);
    await undo(page);
    expect(await evidenceOf()).toBe(JSON.stringify(demo["evidence"]));
    expect(await page.locator(".case").count()).toBe(3);
    expect(wrong).toEqual([]);
    await done();
  });

  test("are added, told apart in words, duplicated and removed", async () => {
    const { page, wrong, done } = await opened(withoutFallow, "cases");
    await page.getByRole("button", { name: "Add a case" }).click();
    const third = page.locator(".case").nth(2);
    await expect
      .poll(() => third.locator(".case-said").textContent())
      .toContain("roots 2 in deeper than in “as it is”");
    await typeAt(page, "cases[2].rootingDepth", "");
    expect(await third.locator(".case-said").textContent()).toBe("Nothing differs yet.");
    await third.locator("summary", { hasText: "plough pan" }).click();
    await typeAt(page, "cases[2].soil.layers[0].bulkDensity", "1.4 g/cm^3");
    await expect
      .poll(() => third.locator(".case-said").textContent())
      .toBe("plough pan: bulk density 1.4 g/cm^3.");
    await page.waitForTimeout(400);
    await settled(page);
    expect(await page.locator(".problem-list").count()).toBe(0);
    expect((await lastComparison(page)).cases).toHaveLength(3);
    expect((await kept(page)).cases[2]).toEqual({
      name: "two inches deeper",
      soil: { layers: [{ name: "plough pan", bulkDensity: "1.4 g/cm^3" }] },
    });
    await typeAt(page, "cases[2].soil.layers[0].bulkDensity", "");
    expect((await kept(page)).cases[2]).toEqual({ name: "two inches deeper" });
    await third.getByRole("button", { name: "Duplicate" }).click();
    expect(await page.locator(".case").count()).toBe(4);
    await page.locator(".case").nth(3).getByRole("button", { name: "Remove" }).click();
    expect(await page.locator(".case").count()).toBe(3);
    expect(wrong).toEqual([]);
    await done();
  });
});

describe("the yield line", () => {
  test("is chosen among the published ones, or given by numbers of one's own", async () => {
    const { page, done } = await opened(small, "yield");
    await page.getByRole("radio", { name: /west-central Kansas/ }).check();
    await page.waitForTimeout(100);
    await settled(page);
    expect((await lastComparison(page)).method.yieldLine.source).toContain("west-central Kansas");
    await page.locator("#inputs-yield summary", { hasText: "your own" }).click();
    await typeAt(page, "yield.threshold", "150 mm");
    await page.waitForTimeout(400);
    await settled(page);
    expect((await lastComparison(page)).method.yieldLine.thresholdMm).toBeCloseTo(150);
    expect(await page.locator("#inputs-yield .caution").textContent()).toContain("straight line");
    await done();
  });
});

describe("as a file", () => {
  test("says what is entered elsewhere, and leads there", async () => {
    const { page, done } = await opened(small, "file");
    const section = page.locator("#inputs-file");
    expect(await section.textContent()).not.toMatch(/not used|still to come/);
    await section.getByRole("link", { name: "In the field" }).click();
    await page.getByRole("heading", { name: "In the field" }).waitFor();
    await done();
  });

  test("text is used when it can be read, and kept while it cannot", async () => {
    const { page, wrong, done } = await opened(small, "file");
    await page.locator("summary", { hasText: "The scenario as text" }).click();
    const text = page.locator(".as-file textarea");
    const before = await text.inputValue();
    await text.fill(`${before},`);
    await page.getByRole("button", { name: "Use this text" }).click();
    expect(await page.locator(".as-file [role=alert]").textContent()).toMatch(/line \d+/);
    await page.reload();
    await expect.poll(() => text.inputValue()).toBe(`${before},`);
    await text.fill(before.replace("plough pan, silt loam", "pan"));
    await page.getByRole("button", { name: "Use this text" }).click();
    await expect.poll(() => page.locator(".head-name").textContent()).toBe("Grain sorghum over a pan");
    expect(wrong).toEqual([]);
    await done();
  });

  test("with a rotation and a season under way is read as it is", async () => {
    const { page, wrong, done } = await opened({
      ...withoutFallow,
      surface: { residueCover: "50 %", residueDecay: "none" },
      rotation: ["grain sorghum", "fallow"],
      outlook: { date: "2024-07-03", moistDepth: "20 in", shareBelow: "30 %" },
    });
    expect(await page.locator(".problem-list").count()).toBe(0);
    expect(await page.locator(".banner").count()).toBe(0);
    expect((await kept(page))["rotation"]).toEqual(["grain sorghum", "fallow"]);
    expect(wrong).toEqual([]);
    await done();
  });

  test("a key that nobody knows can be taken out", async () => {
    const { page, done } = await opened({ ...small, colour: "red" });
    await expect.poll(() => page.locator(".problem-list").textContent()).toContain("colour");
    await page.getByRole("button", { name: "Take it out" }).click();
    await expect.poll(() => page.locator(".problem-list").count()).toBe(0);
    await done();
  });
});

describe("every demo", () => {
  test("with everything unfolded axe finds nothing serious, and it fits narrow screens", async () => {
    const { page, wrong, done } = await opened(small, "weather");
    await page.getByRole("radio", { name: "Monthly normals" }).check();
    await typeAt(page, "weather.monthlyNormals.tMin[3]", "cold");
    await unfoldAll(page);
    await expect.poll(() => page.locator(".problem-list").count()).toBe(1);
    for (const look of [
      ["light", 1280],
      ["dark", 1280],
      ["light", 390],
      ["light", 320],
    ] as const) {
      await lookAt(page, look);
      for (const card of cardNames) {
        await openCard(page, card);
        expect(await faultsSeen(page, look), `${card}, ${look.join()}`).toEqual([]);
      }
    }
    expect(wrong).toEqual([]);
    await done();
  }, 120_000);

  test("without fallow everything unfolded fits narrow screens too", async () => {
    const { page, done } = await opened(withoutFallow, "weather");
    await page.getByRole("radio", { name: "Monthly normals" }).check();
    await unfoldAll(page);
    for (const width of [390, 320]) {
      await lookAt(page, ["light", width]);
      for (const card of cardNames) {
        await openCard(page, card);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), card).toBeLessThanOrEqual(
          width,
        );
      }
    }
    await done();
  });
});

const openCardsIn = (page: Page) =>
  page
    .locator(".card")
    .evaluateAll((all) => all.flatMap((one) => ((one as HTMLDetailsElement).open ? [one.id] : [])));

describe("the cards", () => {
  test("say in a line what stands on each, closed on at most two screens", async () => {
    const { page, done } = await opened();
    expect(await openCardsIn(page)).toEqual([]);
    expect(await page.locator(".card").count()).toBe(11);
    for (const said of await page.locator(".card-said").allTextContents()) expect(said).not.toBe("");
    expect(await page.locator("#inputs-soil .card-said").textContent()).toMatch(
      /^plough pan 6 to 10 in, 1\.62 g\/cm³, roots keep \d+ % of their pace, 4 layers to 96 in$/,
    );
    for (const width of [1280, 390]) {
      await lookAt(page, ["light", width]);
      const screens = await page.evaluate(() => document.documentElement.scrollHeight / innerHeight);
      expect(screens, `${width} px`).toBeLessThanOrEqual(2);
      await page.evaluate(() => scrollTo(0, 1e6));
      const seen = await page.locator(".answer-now").evaluate((one) => {
        const { top, bottom } = one.getBoundingClientRect();
        return top >= 0 && bottom <= innerHeight;
      });
      expect(seen, `the answer at ${width} px`).toBe(true);
    }
    await done();
  });

  test("open one at a time, by key and by search; what was open and how far it was read come back", async () => {
    const { page, wrong, done } = await opened();
    const summary = (card: CardName) => page.locator(`#inputs-${card} > summary`);
    await summary("soil").focus();
    await page.keyboard.press("Enter");
    await expect.poll(() => openCardsIn(page)).toEqual(["inputs-soil"]);
    await summary("surface").focus();
    await page.keyboard.press("Space");
    await expect.poll(() => openCardsIn(page)).toEqual(["inputs-surface"]);
    expect(await summary("surface").evaluate((one) => one === document.activeElement)).toBe(true);
    // What was clicked stays where it was, though what closed lay above it.
    await summary("soil").click();
    await expect.poll(() => openCardsIn(page)).toEqual(["inputs-soil"]);
    await summary("weather").scrollIntoViewIfNeeded();
    const top = () => summary("weather").evaluate((one) => one.getBoundingClientRect().top);
    const before = await top();
    await summary("weather").evaluate((one: HTMLElement) => one.click());
    await expect.poll(() => openCardsIn(page)).toEqual(["inputs-weather"]);
    // Or as near as the top of the page lets it.
    const isAtTop = () => page.evaluate(() => scrollY === 0);
    await expect.poll(async () => (await isAtTop()) || Math.abs((await top()) - before) < 2).toBe(true);
    // What is closed is on the page all the same: the browser's own search finds it.
    expect(await field(page, "soil.layers[1].bulkDensity").locator("input").inputValue()).toBe("1.62 g/cm^3");
    // A hint shows at the field in use only.
    const hint = field(page, "weather.annualRain").locator(".field-hint");
    expect(await hint.isVisible()).toBe(false);
    await field(page, "weather.annualRain").locator("input").focus();
    expect(await hint.isVisible()).toBe(true);
    await openCard(page, "soil");
    await page.evaluate(() => scrollTo(0, 700));
    await page.waitForTimeout(300);
    // From where it is read: a click by hand would bring the head into sight first.
    await page.getByRole("link", { name: "Keep & share" }).evaluate((one: HTMLElement) => one.click());
    await page.waitForSelector("main.view-keep h1");
    await page.goBack();
    await expect.poll(() => openCardsIn(page)).toEqual(["inputs-soil"]);
    await expect.poll(() => page.evaluate(() => scrollY)).toBe(700);
    await page.reload();
    await expect.poll(() => openCardsIn(page), patience).toEqual(["inputs-soil"]);
    await expect.poll(() => page.evaluate(() => scrollY), patience).toBe(700);
    expect(wrong).toEqual([]);
    await done();
  });
});

test("on a phone the head is one row with a menu, spots are cards with a number pad, and the leaf comes back", async () => {
  const { page, wrong, close } = await pageOf(
    "field",
    demo,
  )({
    scenario: { ...demo, ensemble: { years: 12, seed: 1 } },
    options: { viewport: { width: 390, height: 844 } },
  });
  const height = (of: string) => page.locator(of).evaluate((one) => one.getBoundingClientRect().height);
  expect(await height(".head")).toBeLessThan(64);
  await page.getByRole("button", { name: "Counts", exact: true }).click();
  const heads = field(page, "evidence.counts[0].spots[0].heads").locator("input");
  await heads.waitFor();
  expect(await heads.getAttribute("inputmode")).toBe("decimal");
  const kernels = field(page, "evidence.counts[0].spots[0].kernelsPerHead");
  await kernels.locator("input").fill("980");
  await kernels.getByRole("button", { name: /^Next number/ }).click();
  await page.keyboard.type("1020");
  expect(await kernels.locator("input").inputValue()).toBe("980, 1020");
  // What is entered stands before what it shows.
  const topOf = (of: string) =>
    page
      .locator(of)
      .first()
      .evaluate((one) => one.getBoundingClientRect().top);
  expect(await topOf(".tally")).toBeLessThan(await topOf(".measured-room"));
  for (const width of [390, 320]) {
    await page.setViewportSize({ width, height: 844 });
    for (const leaf of await page.locator(".field-leaves button").all()) {
      await leaf.click();
      const over = () => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      expect(await over(), `${await leaf.textContent()} at ${width} px`).toBeLessThanOrEqual(0);
      const wide = await page
        .locator(".tally-room")
        .evaluateAll((all) => all.filter((one) => one.scrollWidth > one.clientWidth + 1).length);
      expect(wide, `tables of ${await leaf.textContent()} at ${width} px`).toBe(0);
    }
  }
  await page.getByRole("button", { name: "Strips", exact: true }).click();
  await page.reload();
  const isAt = (leaf: string) =>
    expect.poll(() => page.locator(".field-leaves [aria-pressed=true]").textContent(), patience).toBe(leaf);
  await isAt("Strips");
  await page.getByRole("button", { name: "The dig", exact: true }).click();
  await isAt("The dig");
  await page.goBack();
  await isAt("Strips");
  await page.getByRole("button", { name: /Menu/ }).click();
  await page.getByRole("link", { name: "Keep & share" }).click();
  await page.waitForSelector("main.view-keep h1");
  expect(await page.locator(".tabs").isVisible()).toBe(false);
  expect(await page.locator(".keep-only-here").textContent()).toContain("Only this machine can open a link");
  expect(wrong).toEqual([]);
  await close();
});
