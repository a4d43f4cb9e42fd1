import uptakeByDepth from "../../../data-reference/uptake-by-depth.json" with { type: "json" };
import { maturityNames } from "../../crop/cropCalendar.ts";
import { choice, group, list, monthDay, number, quantity, quantityAsWritten, text } from "./fields.ts";
import { kcbWithin, rootDepthFrom } from "./facts/limits.ts";
import { sayDefault, withDefault, type Default } from "./facts/withDefault.ts";

/** The crop part of a scenario file; every number left out is the crop's own from the published tables. */

const own = "the crop's own";

const rootsEndNames = ["flowering", "end of mid-season", "maturity"] as const;

/** What a crop of the user's own has where nothing is given. Numbers in C, mm, and shares as parts of 1. */
export const ownCropDefaults = {
  baseTemperature: { value: 0, why: "C; our choice for a crop of your own" },
  sowingDepth: { value: 40, why: "mm; common practice, no source" },
  uptakeShare: {
    value: 0.096,
    why: "a day; Dardanelli et al. 2004, much the same for the field crops they compared (memory)",
  },
  denseRoots: { value: uptakeByDepth.denseRootsMm.value, why: `mm; ${uptakeByDepth.denseRootsMm.why}` },
  uptakeHalving: { value: uptakeByDepth.halvingMm.value, why: `mm; ${uptakeByDepth.halvingMm.why}` },
  depletionFraction: { value: 0.55, why: "FAO-56 Table 22, usual for cereals (read)" },
} as const satisfies Record<string, Default<number>>;

/** The same for words. */
export const ownCropRootsEnd = "maturity";

/** What stands where nothing is said of it. */
export const fullStand = { value: 1, kind: "share", why: "" } as const satisfies Default<number>;

const cropShape = {
  sowing: monthDay(`Day of sowing, such as "Jun 1". Left out: ${own}`).optional(),
  maturity: choice(
    maturityNames,
    "How long the type takes, as the trade says it, for a crop we have numbers of. Left out: medium, fitted to the season of the place where growers choose by it",
    {
      late: "full",
      long: "full",
      "full-season": "full",
      "full season": "full",
      short: "early",
      mid: "medium",
      middle: "medium",
    },
  ).optional(),
  ripe: monthDay(
    `Day on which it is ripe in a normal year here, such as "Jun 25", in place of maturity or stages, for a crop we have numbers of`,
  ).optional(),
  harvest: monthDay(
    `Usual day of harvest, such as "Jul 1", in place of ripe; the crop is taken to be ripe some days before`,
  ).optional(),
  clock: choice(
    ["thermal time", "days"],
    "What the stages run on. Left out: thermal time, or days without temperatures",
  ).optional(),
  stageLengths: list(
    quantityAsWritten(["thermalTime", "duration"], "Length of the stage"),
    "Initial, development, mid-season and late season: degree days with the thermal clock, days otherwise; bare numbers likewise (C day)",
    { atLeast: 4, atMost: 4 },
  ).optional(),
  stageDays: list(
    quantity("duration", {
      means: "Length of the stage in calendar days",
      within: { from: 0, to: 400, says: "0 to 400 days" },
    }),
    "The same stages in calendar days, for a record without temperatures and for the longest season; a crop of your own on thermal time needs them",
    { atLeast: 4, atMost: 4 },
  ).optional(),
  baseTemperature: quantity("temperature", {
    means: "Below it the thermal clock stands still",
    otherwise: own,
    within: { from: -10, to: 25, says: "14 to 77 F (-10 to 25 C)" },
  }).optional(),
  springGrowth: monthDay(
    `A winter crop stays in its first stage until this day, such as "Mar 1". Left out: ${own}; none where stage lengths are given`,
  ).optional(),
  kcbInitial: number("Basal crop coefficient of the initial stage (FAO-56)", kcbWithin).optional(),
  kcbMid: number("Basal crop coefficient of mid-season", kcbWithin).optional(),
  kcbEnd: number("Basal crop coefficient at the end of the late season", kcbWithin).optional(),
  height: quantity("height", {
    means: "Largest height",
    otherwise: own,
    within: rootDepthFrom("2 in", 50),
  }).optional(),
  dormantBelow: quantity("temperature", {
    means: "A winter crop is dormant below this daily mean",
    otherwise: own,
    within: { from: -20, to: 20, says: "-4 to 68 F (-20 to 20 C)" },
  }).optional(),
  kcbDormant: number("Basal crop coefficient of the sleeping crop", kcbWithin).optional(),
  stand: quantity("share", {
    means: "Leaf area against a full stand, in a thin stand or in wide or skipped rows; or give `population`",
    otherwise: sayDefault(fullStand),
    within: { from: 0.05, to: 1, says: "5 to 100 %" },
  }).optional(),
  population: quantity("population", {
    means:
      "Plants on the ground, counted over rows and the room between them, so that wide or skipped rows count as thin",
    within: { from: 0, to: 1000, above: true, says: "more than 0 and at most 4,000,000 plants/ac" },
  }).optional(),
  fullPopulation: quantity("population", {
    means: "Plants of a full stand here, in rows of the usual width",
    otherwise: "the crop's own on dry land",
    within: { from: 0, to: 1000, above: true, says: "more than 0 and at most 4,000,000 plants/ac" },
  }).optional(),
  plantHabit: withDefault(
    choice(
      ["fills in", "stays small"],
      "Whether plants branch or tiller into the room of a thin stand (FAO-56 Box 17)",
    ),
    "fills in",
    "plants branch or tiller into the room they have (FAO-56 Box 17)",
  ),
  sowingDepth: quantity("depth", {
    means: "Where the root front starts; of sod as deep as its roots go",
    otherwise: own,
    within: rootDepthFrom("0.04 in", 1),
  }).optional(),
  maxRootDepth: quantity("depth", {
    means: "Deepest rooting with nothing in the way",
    otherwise: own,
    within: rootDepthFrom("2 in", 50),
  }).optional(),
  rootsEnd: choice(
    rootsEndNames,
    `Stage at which roots stop going down: when flowering begins, at the end of mid-season, or when ripe. Left out: ${own}; ${ownCropRootsEnd} for a crop of your own`,
  ).optional(),
  frontVelocity: quantity("rate", {
    means: "Pace of the root front with nothing in the way, until the roots stop going down",
    otherwise: "by the crop's stages",
    within: { from: 0, to: 101.6, above: true, says: "more than 0 and at most 4 in/day (100 mm/day)" },
  }).optional(),
  uptakeShare: quantity("sharePerDay", {
    means: "Share of a rooted slice's available water that roots can take in a day, where they are dense",
    otherwise: own,
    within: { from: 0.005, to: 1, says: "0.5 to 100 %/day" },
  }).optional(),
  denseRoots: quantity("depth", {
    means: "Down to here roots are dense; beneath, what they can take in a day falls off",
    otherwise: own,
    within: rootDepthFrom("0", 0),
  }).optional(),
  uptakeHalving: quantity("depth", {
    means: "Depth over which what roots can take in a day falls to half, beneath the dense roots",
    otherwise: own,
    within: { from: 50, to: 101600, says: "2 in to 330 ft (50 mm to 100 m)" },
  }).optional(),
  depletionFraction: quantity("share", {
    means: "FAO-56 p at 5 mm/day; only the root-zone average uses it",
    otherwise: own,
    within: { from: 0.05, to: 0.95, says: "5 to 95 %" },
  }).optional(),
};

export const cropFields = group(
  { name: text("A crop we have numbers of, or any other by its own numbers", 60), ...cropShape },
  "The crop",
);

/** Crop of one case: only what differs. The crop itself is the same for all, so that yields compare. */
export const cropPatchFields = group(cropShape, "What differs in the crop");
