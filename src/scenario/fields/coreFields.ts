import { alternatives, isSaidTwice } from "./facts/alternatives.ts";
import { faultAt, group, list, quantity } from "./fields.ts";

/** Soil cores of a layer in a scenario file. */

const mass = { from: 0, to: 20_000, above: true, says: "more than 0 and at most 20 kg (44 lb)" };
const ring = { from: 10, to: 304.8, says: "0.4 to 12 in (10 to 300 mm)" };

const coreFields = group(
  {
    wetMass: quantity("sampleMass", {
      means: "Weight as taken from the field, without the ring",
      otherwise: "the core tells density only",
      within: mass,
    }).optional(),
    dryMass: quantity("sampleMass", { means: "Weight after drying at 105 C (221 F)", within: mass }),
    volume: quantity("sampleVolume", {
      means: "Of the ring; or give `diameter` and `length`",
      otherwise: "the core tells water by weight only",
      within: { from: 5, to: 20_000, says: "5 to 20,000 cm^3" },
    }).optional(),
    diameter: quantity("depth", { means: "Inside of the ring; needs `length`", within: ring }).optional(),
    length: quantity("depth", {
      means: "Of the core; needs `diameter`",
      within: { from: 10, to: 2006.6, says: "0.4 to 79 in (10 to 2000 mm)" },
    }).optional(),
    stoneMass: quantity("sampleMass", {
      means: "Dry stones > 2 mm of the core, for the density of the fine earth",
      otherwise: "none weighed out",
      within: { ...mass, above: false, says: "0 to 20 kg (44 lb)" },
    }).optional(),
  },
  "One core, weighed",
).superRefine((core, context) => {
  const wrong = (path: string, found: string, expected: string, mend: string) =>
    context.addIssue(faultAt([path], found, expected, mend));
  const grams = (value: number) => `${Math.round(value * 10) / 10} g`;
  const { wetMass, dryMass, volume, diameter, length, stoneMass = 0 } = core;
  if (wetMass !== undefined && wetMass < dryMass)
    wrong(
      "wetMass",
      grams(wetMass),
      `at least the dry weight, ${grams(dryMass)}`,
      "check which weight is which",
    );
  if (stoneMass >= dryMass)
    wrong(
      "stoneMass",
      grams(stoneMass),
      `less than the dry weight, ${grams(dryMass)}`,
      "give the dry weight of the whole core, stones and all",
    );
  if (isSaidTwice(core, "volume", alternatives.core))
    wrong("volume", "both", "the volume, or diameter and length", "leave one out");
  else if ((diameter === undefined) !== (length === undefined))
    wrong(
      diameter === undefined ? "diameter" : "length",
      "nothing",
      "diameter and length together",
      "give both, or the volume",
    );
  if (wetMass === undefined && volume === undefined && (diameter ?? length) === undefined)
    wrong("wetMass", "nothing", "a wet weight, or the volume of the ring", "give one or both");
});

/** Cores taken in a layer. */
export const coresField = list(
  coreFields,
  "Cores of this layer: they give its bulk density where none is typed, and its water where startingWater says they do",
  { atMost: 100 },
).optional();
