/** A fallow from harvest to sowing, over many years: what it stored of what fell. */
import { dayNumber, monthOf, dayOfMonth, yearOf } from "../src/quantity/calendar.ts";
import { dryRecord } from "./dryRecord.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "./places.ts";
import { surfaceOf, type FallowSystem } from "./residue.ts";
import { bySeason } from "./seasons.ts";
import { availableMm, fallenMm, mean, sum } from "./water.ts";

export interface FallowCase {
  readonly place: string;
  readonly weather: "generated" | "dry record";
  readonly system: FallowSystem;
  /** The crop that the fallow ends with; its sowing day. */
  readonly crop: string;
  readonly sowing: string;
  readonly months: number;
  /** Days that part the fallow, such as "09-15", in their order after harvest. */
  readonly splits?: readonly string[];
  /** Available water that the last crop left, percent. */
  readonly left?: number;
}

export interface FallowPart {
  readonly rainMm: number;
  readonly gainMm: number;
  /** Stored of a hundred fallen, over all years together. */
  readonly percent: number;
}

export interface Fallow {
  readonly whole: FallowPart;
  /** Between the splits: one more than there are. */
  readonly parts: readonly FallowPart[];
  /** Mean over the years, mm. */
  readonly gainBelowTwoFtMm: number;
  readonly availableAtSowingMm: number;
  readonly runoffPercent: number;
  readonly drainagePercent: number;
  readonly evaporationPercent: number;
  readonly years: number;
}

/** Enough for a mean good to about 1.5 points; of the record as many as it holds. */
const generatedYears = 60;
const recordYears = 12;
const twoFtMm = 610;
const daysPerMonth = 365.25 / 12;

const known = new Map<string, Promise<Fallow>>();

/** The fallow of a case; the same case is run once. Needs the folder of open data for the dry record. */
export function fallowOf(one: FallowCase, openData: string | null): Promise<Fallow> {
  const key = JSON.stringify(one);
  const found = known.get(key) ?? runFallow(one, openData);
  known.set(key, found);
  return found;
}

async function runFallow(
  { place: placeId, weather, system, crop, sowing, months, splits = [], left = 10 }: FallowCase,
  openData: string | null,
): Promise<Fallow> {
  const place = placeNamed(placeId);
  const isRecord = weather === "dry record";
  if (isRecord && openData === null) throw new Error("the dry record is made of open data");
  const written = {
    site: siteOf(place),
    soil: { layers: layersOf(place), startingWater: { share: `${left} %` } },
    weather: isRecord ? { record: "dry.csv" } : normalsOf(place),
    crop: { name: crop, sowing },
    fallow: { length: `${Math.round(months * daysPerMonth)} days` },
    surface: surfaceOf(system),
    ensemble: { years: isRecord ? recordYears : generatedYears, seed: 1 },
  };
  const files = isRecord ? { "dry.csv": dryRecord(openData!, place) } : {};
  const seasons = await bySeason(written, files, (run, { weather }) => {
    const end = run.course.sowingDay;
    const firstDay = weather.firstDay + run.firstIndex;
    const edges = [0, ...splitDays(firstDay, splits), end];
    const part = (from: number, to: number) => ({
      rainMm: fallenMm(run, from, to - 1),
      gainMm: availableMm(run, to - 1) - availableMm(run, from - 1),
    });
    const total = (of: Float64Array) => sum([...of.subarray(0, end)]);
    return {
      whole: part(0, end),
      parts: edges.slice(1).map((to, p) => part(edges[p]!, to)),
      belowMm: availableMm(run, end - 1, twoFtMm) - availableMm(run, -1, twoFtMm),
      availableMm: availableMm(run, end - 1),
      runoffMm: total(run.ledger.runoffMm),
      drainageMm: total(run.ledger.drainageMm),
      evaporationMm: total(run.ledger.evaporationMm),
    };
  });
  const pooled = (parts: readonly { rainMm: number; gainMm: number }[]): FallowPart => {
    const [rainMm, gainMm] = [mean(parts.map((p) => p.rainMm)), mean(parts.map((p) => p.gainMm))];
    return { rainMm, gainMm, percent: (100 * gainMm) / rainMm };
  };
  const whole = pooled(seasons.map((season) => season.whole));
  const shareOf = (of: (season: (typeof seasons)[number]) => number) =>
    (100 * mean(seasons.map(of))) / whole.rainMm;
  return {
    whole,
    parts: [...splits, ""].map((_, p) => pooled(seasons.map((season) => season.parts[p]!))),
    gainBelowTwoFtMm: mean(seasons.map((season) => season.belowMm)),
    availableAtSowingMm: mean(seasons.map((season) => season.availableMm)),
    runoffPercent: shareOf((season) => season.runoffMm),
    drainagePercent: shareOf((season) => season.drainageMm),
    evaporationPercent: shareOf((season) => season.evaporationMm),
    years: seasons.length,
  };
}

/** Days of the run on which the splits fall, each the first of its date after the one before. */
function splitDays(firstDay: number, splits: readonly string[]): number[] {
  let after = firstDay;
  return splits.map((split) => {
    const [month, day] = split.split("-").map(Number) as [number, number];
    const isLater = month * 31 + day > monthOf(after) * 31 + dayOfMonth(after);
    after = dayNumber(yearOf(after) + (isLater ? 0 : 1), month, day);
    return after - firstDay;
  });
}
