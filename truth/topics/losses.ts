/** What runs off, what drains, and how much of a season's water use goes through the crop. */
import file from "../../data-reference/scoreboard/losses.json" with { type: "json" };
import type { CaseAfterRun } from "../../src/answer/runs/run.ts";
import { sumOver } from "../../src/season/ledger.ts";
import { dryRecord } from "../dryRecord.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "../places.ts";
import { surfaceOf, type FallowSystem } from "../residue.ts";
import type { Row, Topic } from "../row.ts";
import { bySeason, type Files, type Written } from "../seasons.ts";
import { fallenMm, sum } from "../water.ts";

export const losses: Topic = {
  file: { title: file.title, rows: file.rows as unknown as readonly Row[] },
  isFallow: false,
  async ours(openData) {
    const wheat = await wheatFallow("akron", normalsOf(placeNamed("akron")), {});
    const bushland = await bushlandRotation();
    const ours: Record<string, number> = {
      "runoff-akron-generated": wheat.runoffInPerYear,
      "crop-share-wheat": wheat.cropShare,
      "runoff-big-storms": bushland.bigStormsThatRanOff,
      "drainage-bushland": bushland.drainagePercent,
      "crop-share-sorghum": bushland.sorghumShare,
    };
    if (openData !== null) {
      const files = { "dry.csv": dryRecord(openData, placeNamed("akron")) };
      const onRecord = await wheatFallow("akron", { record: "dry.csv" }, files);
      ours["runoff-akron-record"] = onRecord.runoffInPerYear;
    }
    return ours;
  },
};

interface Sums {
  readonly days: number;
  readonly fallenMm: number;
  readonly runoffMm: number;
  readonly drainageMm: number;
  readonly evaporationMm: number;
  readonly transpirationMm: number;
  /** Days with more than 50 mm of rain, and those of them with runoff. */
  readonly bigStorms: number;
  readonly bigStormsThatRanOff: number;
}

function sumsOf(run: CaseAfterRun): Sums {
  const { ledger, course, totals } = run;
  const last = course.maturityDay;
  const big = Array.from({ length: last + 1 }, (_, day) => day).filter((day) => ledger.rainMm[day]! > 50);
  return {
    days: last + 1,
    fallenMm: fallenMm(run, 0, last),
    runoffMm: sumOver(ledger.runoffMm, 0, last),
    drainageMm: sumOver(ledger.drainageMm, 0, last),
    evaporationMm: totals.evaporationMm,
    transpirationMm: totals.transpirationMm,
    bigStorms: big.length,
    bigStormsThatRanOff: big.filter((day) => ledger.runoffMm[day]! > 0).length,
  };
}

async function runSums(
  place: string,
  weather: Written,
  files: Files,
  crop: Written,
  months: number,
  system: FallowSystem,
  years: number,
): Promise<Sums[]> {
  const written = {
    site: siteOf(placeNamed(place)),
    soil: { layers: layersOf(placeNamed(place)), startingWater: { share: "10 %" } },
    weather,
    crop,
    fallow: { length: `${months} months` },
    surface: surfaceOf(system),
    ensemble: { years, seed: 1 },
  };
  return bySeason(written, files, sumsOf);
}

const total = (runs: readonly Sums[], of: (one: Sums) => number): number => sum(runs.map(of));
const cropShareOf = (runs: readonly Sums[]): number => {
  const crop = total(runs, ({ transpirationMm }) => transpirationMm);
  return crop / (crop + total(runs, ({ evaporationMm }) => evaporationMm));
};

/** Two years: 14 months of tilled fallow and the wheat. */
async function wheatFallow(place: string, weather: Written, files: Files) {
  const wheat = { name: "winter wheat", sowing: "Sep 20" };
  const runs = await runSums(place, weather, files, wheat, 14, "tilled", "record" in weather ? 11 : 30);
  const years = total(runs, ({ days }) => days) / 365.25;
  return {
    runoffInPerYear: total(runs, ({ runoffMm }) => runoffMm) / 25.4 / years,
    cropShare: cropShareOf(runs),
  };
}

/** Wheat, 11 months, sorghum, 11 months: both halves from the water that a crop leaves. */
async function bushlandRotation() {
  const weather = normalsOf(placeNamed("bushland"));
  const half = (crop: Written) => runSums("bushland", weather, {}, crop, 11, "stubble mulch", 40);
  const sorghum = await half({ name: "grain sorghum", sowing: "Jun 10" });
  const wheat = await half({ name: "winter wheat", sowing: "Oct 1" });
  const runs = [...sorghum, ...wheat];
  return {
    drainagePercent: (100 * total(runs, (one) => one.drainageMm)) / total(runs, (one) => one.fallenMm),
    bigStormsThatRanOff:
      (100 * total(runs, (one) => one.bigStormsThatRanOff)) / total(runs, (one) => one.bigStorms),
    sorghumShare: cropShareOf(sorghum),
  };
}
