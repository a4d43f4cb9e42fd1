import { wetnessLimits, type StretchAbove } from "../../../evidence/samples/penetrometer.ts";
import type { ProbedWater } from "../../../evidence/samples/moistDepth.ts";
import type { CoreMean, SoilSampled } from "../../../evidence/samples/soilSampled.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { fixed, percent, type Formatters } from "../../tables/formatters.ts";
import { tableLines } from "../../tables/textTable.ts";

/** What was sampled in the soil, for people: cores, push probe, penetrometer. */

/** @param confidence of the intervals, 0 to 1 */
export function coresLines(sampled: SoilSampled, confidence: number, shown: Formatters): string[] {
  const { layers } = sampled;
  if (layers.length === 0) return [];
  const cell = (mean: CoreMean | null, say: (value: number) => string) =>
    mean === null ? "-" : say(mean.mean);
  const table = tableLines({
    head: [
      ["", "", "density", "by", "by", "water", "available"],
      ["layer", "cores", "g/cm^3", "weight", "volume", shown.length, shown.length],
    ],
    rows: layers.map((layer) => [
      layer.name,
      String(layer.cores),
      cell(layer.densityKgPerM3, density),
      cell(layer.gravimetricPercent, (value) => `${fixed(value, 1)} %`),
      cell(layer.volumeFraction, (value) => `${fixed(100 * value, 1)} %`),
      cell(layer.storedMm, shown.fineWater),
      cell(layer.availableMm, shown.fineWater),
    ]),
  });
  return ["Soil cores", ...table, ...bullets(coresSentences(sampled, confidence, shown))];
}

const density = (kgPerM3: number) => fixed(kgPerM3 / 1000, 2);

/** The same without the table: all water sampled, and the intervals of what is known from several cores. */
export function coresSentences(
  { layers, storedMm, availableMm, waterOverMm }: SoilSampled,
  confidence: number,
  shown: Formatters,
): string[] {
  const known = layers.flatMap(({ name, densityKgPerM3, storedMm: stored }) => [
    ...intervalSaid(`Density of "${name}"`, densityKgPerM3, density, "g/cm^3", confidence),
    ...intervalSaid(`Water in "${name}"`, stored, shown.fineWater, shown.length, confidence),
  ]);
  const total =
    waterOverMm === 0
      ? []
      : [
          `Together ${shown.water(storedMm)} ${shown.length} of water, ${shown.water(availableMm)} ${shown.length} of it available, in ${shown.depth(waterOverMm)} ${shown.length} of soil.`,
        ];
  return [...total, ...known];
}

function intervalSaid(
  what: string,
  mean: CoreMean | null,
  say: (value: number) => string,
  unit: string,
  confidence: number,
): string[] {
  if (mean === null || mean.cores < 2 || mean.sd === null) return [];
  if (mean.interval === null) return [`${what}: all ${mean.cores} cores alike.`];
  const { low, high } = mean.interval;
  return [
    `${what}: ${say(mean.mean)} ${unit}, ${percent(confidence)} interval ${say(low)} to ${say(high)} (${mean.cores} cores, standard deviation ${say(mean.sd)}).`,
  ];
}

export function probeLines(probe: ProbedWater, shown: Formatters): string[] {
  return wrap(probeSaid(probe, shown));
}

export function probeSaid({ moistDepthMm, availableMm, belowMm }: ProbedWater, shown: Formatters): string {
  const { length, depth, water } = shown;
  return `Push probe: moist to ${depth(moistDepthMm)} ${length}, which holds ${water(availableMm)} ${length} of available water at field capacity; below it another ${water(belowMm)} ${length}, as stated. A stone stops a probe as dry soil does: probe more than one place.`;
}

/**
 * @param above where the log is above 300 psi
 * @param wetnessShare of the available water when it was pushed; null = not stated
 */
export function penetrometerLines(
  above: readonly StretchAbove[],
  wetnessShare: number | null,
  shown: Formatters,
): string[] {
  return wrap(penetrometerSaid(above, wetnessShare, shown));
}

export function penetrometerSaid(
  above: readonly StretchAbove[],
  wetnessShare: number | null,
  shown: Formatters,
): string {
  const limit = shown.system === "us" ? "300 psi" : "2.07 MPa (300 psi)";
  const said =
    above.length === 0
      ? `nowhere above ${limit}`
      : `above ${limit} ${above
          .map(({ fromMm, toMm }) =>
            toMm === null
              ? `from ${shown.depth(fromMm)} ${shown.length} down to where the log ends`
              : `from ${shown.depth(fromMm)} to ${shown.depth(toMm)} ${shown.length}`,
          )
          .join(" and ")}`;
  return `Penetrometer: ${said}. ${wetnessSaid(wetnessShare)}`;
}

function wetnessSaid(share: number | null): string {
  if (share === null)
    return "How wet the soil was is not stated; readings belong to soil near field capacity and rise as it dries.";
  if (share < wetnessLimits.unusableBelow)
    return `The soil held about ${percent(share)} of its available water: too dry to tell a dense layer from a dry one, so density decides. Push again a day or two after a soaking.`;
  if (share < wetnessLimits.sureFrom)
    return `The soil held about ${percent(share)} of its available water, so it may read higher than what roots meet after a soaking.`;
  return "The soil was near field capacity, as it should be.";
}
