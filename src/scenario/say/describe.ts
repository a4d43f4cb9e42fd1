import { isSod } from "../../crop/crop.ts";
import { usPerInchOfSlope } from "../../crop/yield/yieldLine.ts";
import {
  inUnits,
  sayMonthDay,
  sayNumber,
  sayQuantity,
  sayYield,
  shownAs,
  type QuantityKind,
  type Units,
} from "../../quantity/index.ts";
import { printable } from "../../printable.ts";
import { bullets, wrap } from "../../wrap.ts";
import { snowCatchUnder } from "../../season/snow.ts";
import { spreadSaid } from "../../soil/equations/availableWaterSpread.ts";
import { passageOf } from "../../soil/layers/slices.ts";
import { textureClass } from "../../soil/equations/texture.ts";
import { isoDate, yearOf } from "../../quantity/calendar.ts";
import type { Case, RotationPlan, Scenario, WeatherPlan } from "../scenario.ts";
import { statedDepthMm } from "../statedDepth.ts";

type Say = (value: number, kind: QuantityKind) => string;

/** A resolved scenario in plain words, 80 columns, with every default it uses and where that comes from. */
export function describeScenario(scenario: Scenario, units: Units): string {
  const say: Say = (value, kind) => sayQuantity(value, kind, units);
  const { name, invented, cases, defaults, notes } = scenario;
  const [first, ...others] = cases;
  // What the years before left is told with the rotation.
  const hasStart = scenario.rotation === null || scenario.rotation.startsAsStated;
  return [
    ...wrap(`${name}${invented ? " (invented data)" : ""}`),
    "",
    ...wrap(siteLine(scenario, say), "  "),
    ...wrap(weatherLine(scenario.weather, say), "  "),
    ...wrap(cropLine(first, say), "  "),
    ...(scenario.rotation === null ? [] : wrap(rotationLine(scenario.rotation), "  ")),
    ...wrap(groundLine(first, say), "  "),
    ...wrap(yieldLineSaid(scenario, units), "  "),
    ...wrap(ensembleLine(scenario, say), "  "),
    ...outlookLine(scenario),
    ...caseLines(first, null, say, units, hasStart),
    ...others.flatMap((one) => caseLines(one, first, say, units, hasStart)),
    ...(notes.length > 0 ? ["", "Noticed", ...bullets(notes)] : []),
    "",
    `Defaults used (${defaults.length})`,
    ...bullets(defaults.map(({ field, value, why }) => `${field}: ${value} (${why})`)),
    "",
  ].join("\n");
}

function siteLine({ site }: Scenario, say: Say): string {
  const { latitudeDeg, elevationM, setting } = site;
  const latitude = `${sayNumber(Math.abs(latitudeDeg), 2, 4)} ${latitudeDeg < 0 ? "S" : "N"}`;
  return `Site: latitude ${latitude}, elevation ${say(elevationM, "elevation")}, ${setting}.`;
}

/** Told only where the file tells of it. */
function outlookLine({ outlook, cases }: Scenario): string[] {
  if (outlook === null || outlook.day === null) return [];
  const measured = cases.filter((_, c) => outlook.waterByCase[c] !== null);
  const where =
    measured.length === cases.length ? "" : ` in ${measured.map(({ name }) => `"${name}"`).join(", ")}`;
  const water = measured.length === 0 ? "" : `, with the water measured that day${where}`;
  return wrap(`Outlook: the season under way on ${isoDate(outlook.day)}${water}.`, "  ");
}

function weatherLine(
  { source, referenceEt, rainTotalsMm, rainTotalOver, rainTotalIs }: WeatherPlan,
  say: Say,
): string {
  const totals = rainTotalsMm.map((mm) => say(mm, "rain")).join(", ");
  const scaled =
    rainTotalsMm.length === 0
      ? "years as they are"
      : rainTotalIs === "each year"
        ? `each ${rainTotalOver} scaled to ${totals}`
        : `${totals} as the mean of the ${rainTotalOver}s`;
  if (source.kind === "normals") {
    const yearMm = source.normals.rainMm.reduce((sum, mm) => sum + mm, 0);
    return `Weather: years generated from monthly normals with ${say(yearMm, "rain")} a year; ${scaled}. Reference ET: ${referenceEt}.`;
  }
  const { record } = source;
  const { station } = record;
  const who = [...new Set([station.name, station.id])]
    .filter((part) => part !== "" && !station.format.includes(part))
    .join(", ");
  const last = record.firstDay + record.days - 1;
  const years = yearOf(last) - yearOf(record.firstDay) + 1;
  const own = record.referenceEtMm === null ? referenceEt : "the record's own";
  return `Weather: ${station.format}${who === "" ? "" : ` of ${who}`}, ${isoDate(record.firstDay)} to ${isoDate(last)} (${years} calendar ${years === 1 ? "year" : "years"}); ${scaled}. Reference ET: ${own}.`;
}

function cropLine({ crop, fallowDays }: Case, say: Say): string {
  const fallow = fallowDays > 0 ? `after ${fallowDays} days of fallow` : "without fallow before it";
  const lengths = crop.stageLengths.map((length) => Math.round(length)).join(", ");
  const clock =
    crop.clock === "days" ? `${lengths} days` : `${lengths} C day above ${say(crop.baseC, "temperature")}`;
  const dormancy =
    crop.dormantBelowC === null
      ? ""
      : ` It is dormant below a daily mean of ${say(crop.dormantBelowC, "temperature")}.`;
  const spring =
    crop.springFrom === null ? "" : ` It stays in its first stage until ${sayMonthDay(crop.springFrom)}.`;
  const begins = isSod(crop) ? "its growth begins" : "sown";
  return `Crop: ${crop.name}, ${begins} ${sayMonthDay(crop.sowing)}, ${fallow}. Stages ${clock}; basal coefficients ${crop.kcbInitial}, ${crop.kcbMid}, ${crop.kcbEnd}; roots to ${say(crop.maxRootDepthMm, "depth")} at most.${standSaid(crop.standShare, say)}${dormancy}${spring}`;
}

function rotationLine({ entries, warmUpYears, startsAsStated, startsOn, pathYears }: RotationPlan): string {
  const years = entries.map((entry) => {
    if (entry === null) return "fallow, a year without harvest";
    const { crop, fallowDays } = entry.cases[0]!;
    const asked = entry.isAsked ? ", which the question is about" : "";
    return `${entry.crop} (sown ${sayMonthDay(crop.sowing)}${entry.sownYearBefore ? " the year before" : ""}, usually after ${fallowDays} days without a crop${asked})`;
  });
  const start = startsAsStated
    ? `from the water ${startsOn === null ? "stated" : `measured on ${sayMonthDay(startsOn)}`} on`
    : `after ${warmUpYears} years under the first case's roots`;
  return `Years in a row, by year of harvest: ${years.join("; ")}. Water, straw and snow go from one to the next, ${start}; the path is shown for ${pathYears} years.`;
}

/** A full stand goes without saying. */
function standSaid(standShare: number, say: Say): string {
  return standShare < 1 ? ` The stand has ${say(standShare, "share")} of a full one's leaves.` : "";
}

function groundLine({ ground, fallowDays }: Case, say: Say): string {
  const { curveNumberFallow, curveNumberCrop, residueCoverFallow, residueCoverCrop } = ground;
  const firstCover = fallowDays > 0 ? residueCoverFallow : (residueCoverCrop ?? residueCoverFallow);
  const caught = snowCatchUnder(firstCover, ground);
  return `Surface: ${residueSaid(ground, fallowDays > 0, say)}; curve number ${curveNumberFallow} in fallow, ${curveNumberCrop} with the crop; standing stubble adds ${say(caught, "share")} to the snow; evaporation dries ${say(ground.evaporatingDepthMm, "depth")}.`;
}

function residueSaid(ground: Case["ground"], hasFallow: boolean, say: Say): string {
  const { residueCoverFallow, residueCoverCrop, residueDecays } = ground;
  const crop = residueCoverCrop === null ? "what is left of it" : say(residueCoverCrop, "share");
  const rots = residueDecays ? ", rotting by rain and warmth" : "";
  const cover = hasFallow
    ? `${say(residueCoverFallow, "share")} of the ground when fallow begins, ${crop} at sowing`
    : `${crop} of the ground at sowing`;
  return `residue on ${cover}${rots}`;
}

function yieldLineSaid({ yieldLine }: Scenario, units: Units): string {
  const { slopeKgPerHaPerMm: slope, thresholdMm, capKgPerHa, unit, source } = yieldLine;
  const shown = (kgPerHaPerMm: number) =>
    units === "us" ? sayNumber(usPerInchOfSlope(kgPerHaPerMm, unit)) : sayNumber(kgPerHaPerMm, 1);
  const per = units === "us" ? `${unit.us}/in` : shownAs("yieldPerWater", units).unit;
  const cap = capKgPerHa === null ? "" : `, at most ${sayYield(capKgPerHa, unit, units)}`;
  return `Yield: ${shown(slope.low)} to ${shown(slope.high)} (middle ${shown(slope.middle)}) ${per} above ${sayQuantity(thresholdMm, "rain", units)} of water use${cap}. Source: ${source}.`;
}

function ensembleLine({ ensemble, cases }: Scenario, say: Say): string {
  const { years, seed, availableCapacitySd, deepWaterSd, deepBelowMm, densityReading, deepUptakeSpread } =
    ensemble;
  return `Runs: ${years} weather years for each rainfall total, seed ${seed}; available capacity varies by ${availableCapacitySd === null ? spreadSaid(cases.flatMap(({ layers }) => layers)) : say(availableCapacitySd, "share")}, starting water below ${say(deepBelowMm, "depth")} by ${say(deepWaterSd, "share")} (standard deviations); spread of uptake by depth: ${say(deepUptakeSpread, "share")}; density reading: ${densityReading}.`;
}

/** How much roots take at most, and how it falls with depth. */
function uptakeSaid({ uptake }: Case, say: Say): string {
  const { rule, sharePerDay, denseRootsMm, halvingMm } = uptake;
  if (rule === "root-zone average") return rule;
  return `${rule}, at most ${say(sharePerDay, "sharePerDay")} of a slice's available water; dense roots down to ${say(denseRootsMm, "depth")}, beneath them uptake halves over every ${say(halvingMm, "depth")}`;
}

/** A case; after the first only what is not the first's. */
function caseLines(one: Case, first: Case | null, say: Say, units: Units, hasStart: boolean): string[] {
  const differs = (part: (of: Case) => unknown) =>
    first === null || JSON.stringify(part(one)) !== JSON.stringify(part(first));
  const lines = ["", printable(`Case "${one.name}"`), ...bullets([rootingSaid(one, first, say)])];
  if (differs(({ layers }) => layers)) lines.push(...bullets(["soil:"]), ...layerTable(one, units));
  else lines.push(...bullets(["soil as in the first case"]));
  if (hasStart && differs(({ startingWater }) => startingWater))
    lines.push(...bullets([startSaid(one, say)]));
  if (first !== null && differs(({ ground }) => ground)) lines.push(...bullets([groundLine(one, say)]));
  if (first !== null && differs(({ crop, fallowDays }) => [crop, fallowDays]))
    lines.push(...bullets([cropLine(one, say)]));
  if (differs(({ uptake, evaporation }) => [uptake, evaporation])) {
    lines.push(...bullets([`uptake rule: ${uptakeSaid(one, say)}`, `evaporation rule: ${one.evaporation}`]));
  }
  return lines;
}

function rootingSaid({ rooting, layers }: Case, first: Case | null, say: Say): string {
  const statedMm = statedDepthMm(rooting, first?.rooting ?? rooting);
  const stop = statedMm === null ? "" : say(statedMm, "depth");
  switch (rooting.kind) {
    case "grown":
      return `roots grow through what lies beneath them, ${say(layers.at(-1)?.bottomMm ?? 0, "depth")} of soil at most`;
    case "absolute":
      return `roots grow through what lies beneath them and stop at ${stop}`;
    case "relative": {
      const way = `${say(Math.abs(rooting.extraMm), "depth")} ${rooting.extraMm < 0 ? "less deep" : "deeper"} than the first case's`;
      return statedMm === null
        ? `roots go ${way}`
        : `roots grow through what lies beneath them and stop at ${stop}, ${way}`;
    }
  }
}

function startSaid({ startingWater: start, layers, fallowDays }: Case, say: Say): string {
  const when = fallowDays > 0 ? "when fallow begins" : "at sowing";
  switch (start.kind) {
    case "share":
      return `water ${when}: ${say(start.share, "share")} of what is available, everywhere`;
    case "moist depth":
      return `water ${when}: moist down to ${say(start.moistDepthMm, "depth")}, below that ${say(start.shareBelow, "share")} of what is available`;
    case "by layer":
      return `water ${when}, by volume: ${layers.map(({ name }, l) => `${name} ${say(start.volumeFraction[l] ?? 0, "share")}`).join(", ")}`;
  }
}

/** Depth, texture, density, limits and what is left of the roots' pace, a layer a line. */
function layerTable({ layers }: Case, units: Units): string[] {
  const unit = shownAs("depth", units).unit;
  const pad = (texts: readonly string[]) =>
    texts
      .map((text, i) => (i === 0 ? text.slice(0, 15).padEnd(16) : text.padStart(columns[i] ?? 9)))
      .join("");
  const rows = layers.map((layer) => {
    const { sandFraction, clayFraction } = layer;
    return [
      printable(layer.name),
      `${depth(layer.topMm, units)}-${depth(layer.bottomMm, units)}`,
      textureClass(sandFraction, clayFraction),
      (layer.bulkDensityKgPerM3 / 1000).toFixed(2),
      whole(layer.wiltingPoint),
      whole(layer.fieldCapacity),
      whole(layer.saturation),
      whole(passageOf(layer, 0)),
    ];
  });
  return [["layer", unit, "texture", "g/cm^3", "WP %", "FC %", "sat %", "pace %"], ...rows].map((row) =>
    `  ${pad(row)}`.trimEnd(),
  );
}

const columns = [16, 12, 17, 7, 6, 6, 6, 7];
const whole = (share: number): string => sayNumber(share * 100, 0);
const depth = (mm: number, units: Units): string => sayNumber(inUnits(mm, "depth", units), 1);
