import { sayQuantity } from "../../quantity/index.ts";
import {
  pastureFairFrom,
  pastureGoodAbove,
  pastureGroundCover,
  residueGood,
  usualPastureCondition,
} from "../../season/curveNumber.ts";
import { curveNumberWithin } from "./facts/limits.ts";
import { usualDecaySaid } from "./facts/usualDecay.ts";
import { choice, group, number, quantity } from "./fields.ts";
import { sayDefault, withDefault } from "./facts/withDefault.ts";

/** The ground in a scenario file: residue, runoff, snow, evaporation. */

/**
 * Share of the snowfall that stubble keeps: the loss to blowing snow falls by 22 % of it as wheat stubble rises from 1 to 40 cm
 * near Regina. [Pomeroy et al. 1990] as quoted (read). That it follows the residue in proportion is ours.
 */
export const snowCatchAtFullCover = 0.22;

/** How the readily evaporable water is told. */
export const byTexture = "by the topsoil's texture";

/** What lies on the ground where nothing is said of it. */
export const bareGround = { value: 0, kind: "share", why: "none stated: bare ground" } as const;

const cover = { from: 0, to: 1, says: "0 to 100 %" };
const share = (value: number) => sayQuantity(value, "share", "us");

export const surfaceFields = group(
  {
    residueCover: quantity("share", {
      means:
        "Ground under dead residue on the first day of the run: when fallow begins (harvest of the crop before), or at sowing without fallow. It rots from there on, see `residueDecay`. Of pasture, under live and dead grass",
      otherwise: `${sayDefault(bareGround)}; ${share(pastureGroundCover(usualPastureCondition))} for pasture or range in ${usualPastureCondition} condition`,
      within: cover,
    }).optional(),
    residueCoverFallow: quantity("share", {
      means: "Ground under dead residue when fallow begins",
      otherwise: "`residueCover`",
      within: cover,
    }).optional(),
    residueCoverCrop: quantity("share", {
      means: "Ground under dead residue at sowing",
      otherwise: "what the fallow leaves; without fallow, or beside `residueCoverFallow`, `residueCover`",
      within: cover,
    }).optional(),
    residueDecay: choice(
      ["by weather", "none"],
      `How residue rots. \`by weather\`: by rain and warmth, half or so within a dry year. \`none\`: it stays as stated, for a cover measured as a mean or renewed. Left out: ${usualDecaySaid}`,
    ).optional(),
    cover: choice(
      ["row crops", "small grain", "close-seeded legumes", "pasture or range"],
      "What stands there, for the curve number. Left out: by the crop",
    ).optional(),
    treatment: withDefault(
      choice(
        ["straight row", "contoured", "contoured and terraced"],
        "How the field is worked, for the curve number",
      ),
      "straight row",
      "no contours or terraces stated",
    ),
    condition: choice(
      ["poor", "fair", "good"],
      `Hydrologic condition, for the curve number while the crop stands; fair for pasture or range only. Left out: good with residue on ${share(residueGood)} or more of the ground, otherwise poor; of pasture by its ground cover: fair from ${share(pastureFairFrom)}, good above ${share(pastureGoodAbove)}`,
    ).optional(),
    curveNumber: number(
      "Curve number at average wetness, fallow and crop alike. Left out: from the handbook's table",
      curveNumberWithin,
    ).optional(),
    curveNumberFallow: number("Curve number in fallow", curveNumberWithin).optional(),
    curveNumberCrop: number("Curve number while the crop stands", curveNumberWithin).optional(),
    snowCatch: quantity("share", {
      means: "Snow that standing stubble keeps beyond what bare ground does, share of the snowfall",
      otherwise: `${share(snowCatchAtFullCover)} of the residue cover as it lies that day`,
      within: { from: 0, to: 2, says: "0 to 200 %" },
    }).optional(),
    snowBelow: withDefault(
      quantity("temperature", {
        means: "Below this daily mean precipitation is snow",
        within: { from: -5, to: 5, says: "23 to 41 F (-5 to 5 C)" },
      }),
      1,
      "rain and snow are equally likely there (Jennings et al. 2018, read)",
    ),
    melt: withDefault(
      quantity("meltFactor", {
        means: "Melt for each degree above freezing and day",
        within: { from: 0.5, to: 10.06, says: "0.011 to 0.22 in/F/day (0.5 to 10 mm/C/day)" },
      }),
      2.74,
      "when nothing else is known (NRCS NEH 630 ch. 11, memory)",
    ),
    evaporatingDepth: withDefault(
      quantity("depth", {
        means: "Evaporation depth (FAO-56 Ze)",
        within: { from: 50, to: 203.2, says: "2 to 8 in (50 to 200 mm)" },
      }),
      100,
      "FAO-56 Ze, 100 to 150 mm (read)",
    ),
    readilyEvaporable: quantity("rain", {
      means: "Readily evaporable water (FAO-56 REW): what leaves freely after wetting",
      otherwise: byTexture,
      within: { from: 1, to: 25.4, says: "0.04 to 1 in (1 to 25 mm)" },
    }).optional(),
  },
  "The soil surface",
);
