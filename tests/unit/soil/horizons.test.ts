import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { readAllHorizons, readHorizons } from "../../../src/soil/horizons/horizons.ts";
import { limitsBias } from "../../support/limitsBias.ts";

// Invented horizons under the survey's column names.
const surveyHeader =
  "areasymbol,musym,compname,cokey,chkey,hzname,hzdept_r,hzdepb_r,sandtotal_r,silttotal_r,claytotal_r,om_r,dbthirdbar_r,ksat_r,awc_r";
const rowA1 = "ZZ001,Aa,Testa,11,1,Ap,0,20,30,50,20,1.5,1.40,9,0.18";
const rowA2 = "ZZ001,Aa,Testa,11,2,Bt,20,90,25,45,30,0.6,1.50,3,0.17";
const rowB1 = "ZZ001,Bb,Testa,12,3,A,0,30,40,40,20,1.0,1.45,9,0.16";
const survey = (...rows: string[]): string => [surveyHeader, ...rows].join("\n");
const labHeader =
  "pedon_id,taxon_name,hzn_desgn,hzn_top_cm,hzn_bot_cm,sand_pct,silt_pct,clay_pct,bulk_density_33kpa_g_cm3,water_33kpa_clod_wt_pct,water_33kpa_sieved_wt_pct,water_1500kpa_sieved_wt_pct";
const lab = (...rows: string[]): string => [labHeader, ...rows].join("\n");

describe("soil survey", () => {
  test("units become ours, horizons are sorted", () => {
    const { layers, name, restrictedAtMm, notes } = readHorizons(survey(rowA2, rowA1), "soil.csv", {});
    expect(name).toBe("Testa ZZ001 Aa (component 11)");
    expect(restrictedAtMm).toBeNull();
    expect(layers.map((layer) => layer.name)).toEqual(["Ap", "Bt"]);
    expect(layers[1]).toMatchObject({
      topMm: 200,
      bottomMm: 900,
      sandFraction: 0.25,
      clayFraction: 0.3,
      organicMatterPercent: 0.6,
      bulkDensityKgPerM3: 1500,
      availableWater: 0.17,
    });
    expect(layers[1]?.saturatedConductivityMmPerDay).toBeCloseTo(259.2, 9); // 3 um/s
    expect(notes).toEqual([
      "no wilting point in the file for any horizon: it is estimated",
      "no stones in the file for any horizon: none are assumed",
    ]);
  });

  test.each(["11", "Testa ZZ001 Aa", " testa  zz001 AA "])("component %s is found", (component) => {
    expect(readHorizons(survey(rowA1, rowA2, rowB1), "soil.csv", { component }).layers.length).toBe(2);
  });

  test("one component needs no key, and no name", () => {
    const keyless = survey(rowA1, rowA2).replaceAll(",11,", ",,");
    expect(readHorizons(keyless, "soil.csv", {}).name).toBe("Testa ZZ001 Aa");
    const nameless = keyless.replaceAll("ZZ001,Aa,Testa,", ",,,");
    const { layers, name } = readHorizons(nameless, "soil.csv", {});
    expect(layers.length).toBe(2);
    expect(name).toBe("the only component");
    const header = "hzdept_r,hzdepb_r,sandtotal_r,claytotal_r";
    expect(readHorizons(`${header}\n0,20,30,20\n20,152,25,30`, "soil.csv", {}).layers.length).toBe(2);
  });

  test("a horizon repeated for another map unit is used once", () => {
    const again = rowA1.replace(",Aa,", ",Ac,");
    const { layers, notes } = readHorizons(survey(rowA1, rowA2, again), "soil.csv", {
      component: "Testa ZZ001 Ac",
    });
    expect(layers.length).toBe(2);
    expect(notes[0]).toContain("1 rows repeat a horizon");
  });

  test("missing values are said by horizon, sand follows from silt and clay", () => {
    const bare = "ZZ001,Aa,Testa,11,2,Bt,20,90,,45,30,,NA,,";
    const { layers, notes } = readHorizons(survey(rowA1, bare), "soil.csv", {});
    expect(layers[1]?.sandFraction).toBeCloseTo(0.25, 12);
    expect(notes).toContain(
      "no bulk density in the file for Bt: the texture's normal one is used, without hindrance",
    );
    expect(notes).toContain("no organic matter in the file for Bt: a default is used");
  });

  test("rock below the last texture ends the column", () => {
    const { layers, restrictedAtMm, notes } = readHorizons(
      survey(rowA1, rowA2, "ZZ001,Aa,Testa,11,9,R,90,150,,,,,,,"),
      "soil.csv",
      {},
    );
    expect(layers.length).toBe(2);
    expect(restrictedAtMm).toBe(900);
    expect(notes[0]).toContain("no texture from 90 cm down (R); the column ends there");
  });

  test("water limits by volume go before their difference, where the export has them", () => {
    const text = `${surveyHeader},wthirdbar_r,wfifteenbar_r,fragvol_r\n${rowA1},30,12,10`;
    expect(readHorizons(text, "soil.csv", {}).layers[0]).toMatchObject({
      fieldCapacity: 0.3,
      wiltingPoint: 0.12,
      availableWater: undefined,
      gravelVolumeFraction: 0.1,
    });
  });

  test("semicolons, quotes, a byte-order mark, blank lines and capitals in the header are read", () => {
    const text = `\uFEFF\n${survey(rowA1, "", rowA2).replaceAll(",", ";").toUpperCase()}\r\n`;
    expect(readHorizons(text, "soil.csv", {}).layers.length).toBe(2);
  });
});

describe("inches under the survey's names, which mean cm", () => {
  const inInches = ["0,8,30", "8,32,25"].map(
    (cells, h) => `ZZ001,Aa,Testa,11,${h},H${h},${cells},50,20,1.5,1.40,9,0.18`,
  );
  test("are doubted: no survey stops at 32 cm without rock", () => {
    expect(readHorizons(survey(...inInches), "soil.csv", {}).doubts).toEqual([
      "soil.csv component 11 ends at 32 cm (12.6 in) with no rock below it, which is shallow for a soil survey: its columns mean cm, so write inches as cm.",
    ]);
  });
  test("rock, or a soil described to five feet, is believed", () => {
    const rock = "ZZ001,Aa,Testa,11,9,R,32,80,,,,,,,";
    expect(readHorizons(survey(...inInches, rock), "soil.csv", {}).doubts).toEqual([]);
    const deep = "ZZ001,Aa,Testa,11,9,C,32,152,30,50,20,1.5,1.40,9,0.18";
    expect(readHorizons(survey(...inInches, deep), "soil.csv", {}).doubts).toEqual([]);
  });
});

describe("laboratory", () => {
  const row = "X1,Testa,A,0,20,30,50,20,1.40,22,,9";
  test("water by weight becomes water by volume", () => {
    const { layers, name } = readHorizons(lab(row), "lab.csv", {});
    expect(name).toBe("Testa X1");
    expect(layers[0]?.fieldCapacity).toBeCloseTo(0.308, 12);
    expect(layers[0]?.wiltingPoint).toBeCloseTo(0.126, 12);
  });
  test("sieved water stands in for the clod's", () => {
    const { layers } = readHorizons(lab("X1,Testa,A,0,20,30,50,20,1.40,,20,9"), "lab.csv", {});
    expect(layers[0]?.fieldCapacity).toBeCloseTo(0.28, 12);
  });
  test("water without density is put aside, and that is said", () => {
    const { layers, notes } = readHorizons(lab("X1,Testa,A,0,20,30,50,20,,22,,9"), "lab.csv", {});
    expect(layers[0]?.fieldCapacity).toBeUndefined();
    expect(notes[0]).toBe(
      "A: no bulk density, so its water by weight cannot be used and is estimated instead",
    );
  });
});

describe("what is wrong is one clear line", () => {
  test.each<[string, string, { component?: string; pedon?: string }, RegExp]>([
    [
      "empty file",
      "",
      {},
      /^soil\.csv: expected a CSV of soil horizons with a header row, found an empty file/,
    ],
    ["blank file", "\n \n", {}, /found an empty file/],
    ["header only", surveyHeader, {}, /^soil\.csv: expected rows of horizons below the header/],
    [
      "other columns",
      "date,rain\n2020-01-01,3",
      {},
      /^soil\.csv header: expected soil survey horizons \(hzdept_r.*found "date, rain"/,
    ],
    ["another script", "глубина,песок\n0,40", {}, /^soil\.csv header: .*found "глубина, песок"/],
    ["not a table", "\u0000\u0001PNG\n\u0002", {}, /^soil\.csv header: /],
    [
      "no clay column",
      survey(rowA1).replace("claytotal_r", "klei"),
      {},
      /header: expected the column claytotal_r of soil survey horizons/,
    ],
    [
      "a column twice",
      survey(rowA1).replace("awc_r", "om_r"),
      {},
      /header: expected each column once, found "om_r"/,
    ],
    [
      "several, none chosen",
      survey(rowA1, rowA2, rowB1),
      {},
      /component: expected one of Testa ZZ001 Aa \(11\), Testa ZZ001 Bb \(12\), found nothing/,
    ],
    [
      "name of several",
      survey(rowA1, rowA2, rowB1),
      { component: "testa" },
      /found "testa"; 2 have that name: choose by key/,
    ],
    [
      "unknown name",
      survey(rowA1, rowA2, rowB1),
      { component: "Other" },
      /found "Other"; name one component or its key/,
    ],
    [
      "pedon of a survey",
      survey(rowA1),
      { pedon: "X1" },
      /^soil\.csv pedon: expected a component: the file holds soil survey horizons, found "X1"/,
    ],
    [
      "component of a laboratory",
      lab("X1,T,A,0,20,30,50,20,1.4,22,,9"),
      { component: "T" },
      /component: expected a pedon/,
    ],
    [
      "decimal comma",
      survey(rowA1.replace("1.40", '"1,40"')),
      {},
      /line 2 column dbthirdbar_r: expected a number with a decimal point, found "1,40"; write 1\.40/,
    ],
    [
      "bare comma",
      survey(rowA1.replace("1.40", "1,40")),
      {},
      /line 2: expected 15 cells as in the header, found 16 cells; put texts with commas in quotes/,
    ],
    [
      "words for numbers",
      survey(rowA1.replace(",20,30,", ",twenty,30,")),
      {},
      /line 2 column hzdepb_r: .*found "twenty"/,
    ],
    [
      "other digits",
      survey(rowA1.replace(",30,50,20,", ",٣٠,50,20,")),
      {},
      /line 2 column sandtotal_r: .*found "٣٠"/,
    ],
    [
      "impossible value",
      survey(rowA1.replace(",30,50,20,", ",30,50,220,")),
      {},
      /line 2 column claytotal_r: expected a number from 0 to 100, found "220"/,
    ],
    [
      "kg/m3 for g/cm3",
      survey(rowA1.replace("1.40", "1400")),
      {},
      /column dbthirdbar_r: expected a number from 0\.05 to 2\.65, found "1400"/,
    ],
    [
      "gap",
      survey(rowA1, rowA2.replace(",20,90,", ",25,90,")),
      {},
      /component 11 line 3: expected horizons that follow one another.*found a gap from 20 cm to 25 cm between Ap and Bt; correct the depths/,
    ],
    [
      "overlap",
      survey(rowA1, rowA2.replace(",20,90,", ",15,90,")),
      {},
      /found an overlap from 15 cm to 20 cm between Ap and Bt/,
    ],
    ["not from the surface", survey(rowA2), {}, /found a gap from 0 cm to 20 cm between the surface and Bt/],
    [
      "upside down",
      survey(rowA1.replace(",0,20,", ",20,0,")),
      {},
      /expected a bottom depth below the top depth, found Ap from 20 cm to 0 cm/,
    ],
    ["no depth", survey(rowA1.replace(",0,20,", ",0,,")), {}, /found Ap from 0 cm to no depth/],
    [
      "texture missing above",
      survey(rowA1.replace(",30,50,20,", ",,,,"), rowA2),
      {},
      /line 2: expected sand and clay for every horizon above the last, found none for Ap/,
    ],
    ["texture missing at all", survey(rowA1.replace(",30,50,20,", ",,,,")), {}, /found none for Ap/],
  ])("%s", (_what, text, choose, message) => {
    let said = "no complaint";
    try {
      readHorizons(text, "soil.csv", choose);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      said = error.message;
    }
    expect(said).toMatch(message);
    expect(said.split("\n").length).toBe(1);
  });

  test("ten of many are listed", () => {
    const rows = Array.from({ length: 14 }, (_, i) => rowA1.replace(",11,1,", `,${100 + i},${i},`));
    expect(() => readHorizons(survey(...rows), "soil.csv", {})).toThrow(
      /\(104\) and 9 more, found nothing; name one component or its key \(columns compname, cokey\)/,
    );
  });
});

describe("bias of the estimates", () => {
  test("only horizons with texture and a limit are compared", () => {
    const text = survey(rowA1, rowA2, "ZZ001,Aa,Testa,11,9,R,90,150,,,,,,,", rowB1.replace(/0\.16$/, ""));
    const { availableWater, fieldCapacity } = limitsBias(readAllHorizons(text, "soil.csv"));
    expect(availableWater?.count).toBe(2);
    expect(fieldCapacity).toBeNull();
  });

  test("bias is estimated less measured, RMSE at least as large", () => {
    const layer = { name: "a", topMm: 0, bottomMm: 100, sandFraction: 0.4, clayFraction: 0.2 };
    const { wiltingPoint } = limitsBias([
      { ...layer, wiltingPoint: 0.01 },
      { ...layer, wiltingPoint: 0.03 },
    ]);
    expect(wiltingPoint!.bias).toBeGreaterThan(0);
    // Errors that differ by 0.02 spread 0.01 to either side of their mean.
    expect(wiltingPoint!.rmse ** 2).toBeCloseTo(wiltingPoint!.bias ** 2 + 0.01 ** 2, 12);
  });
});
