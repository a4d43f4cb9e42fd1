import { mmPerInch } from "../../quantity/constants.ts";
import { restrictionKinds } from "../../soil/layers/column.ts";
import { layerOrigins, usualOpenShare } from "../../soil/layers/layerOrigin.ts";
import { percent } from "../../soil/layers/layerRanges.ts";
import { soilStructures } from "../../soil/equations/penetrationFactor.ts";
import { readTextureClass, textureClasses, textureMend } from "../../soil/equations/texture.ts";
import { coresField } from "./coreFields.ts";
import { formFacts } from "./facts/formFacts.ts";
import { resistanceWithin, soilDepthAboveZero, soilDepthWithin } from "./facts/limits.ts";
import { choice, fault, group, list, monthDay, quantity, text } from "./fields.ts";
import { penetrometerFields, wetness } from "./penetrometerFields.ts";
import { sayDefault, withDefault } from "./facts/withDefault.ts";

/** The soil part of a scenario file. */

const share = { from: 0, to: 1, says: "0 to 100 %" };
const water = { from: 0, to: 0.9, above: true, says: "more than 0 and at most 90 % of the soil's volume" };
const estimated = "estimated from texture, organic matter and density (Saxton & Rawls 2006)";
const weighOrLeaveOut =
  "give the dry mass of the layer per volume, or leave it out to estimate it from texture";

const layerShape = {
  thickness: quantity("depth", {
    means: "How thick the layer is; or give `bottom`",
    within: soilDepthAboveZero,
  }).optional(),
  bottom: quantity("depth", {
    means: "Depth of the layer's lower edge; or give `thickness`",
    within: soilDepthAboveZero,
  }).optional(),
  texture: text('USDA texture class such as "silt loam"; or give `sand` and `clay`', 60)
    .refine((name) => readTextureClass(name) !== null, {
      error: ({ input }) =>
        fault(`a USDA texture class (${textureClasses.join(", ")})`, textureMend(String(input))),
    })
    .register(formFacts, { choices: textureClasses })
    .optional(),
  sand: quantity("share", {
    means: "Sand of the fine earth (< 2 mm), by weight; needs `clay`",
    within: share,
  }).optional(),
  clay: quantity("share", {
    means: "Clay of the fine earth (< 2 mm), by weight; needs `sand`",
    within: share,
  }).optional(),
  organicMatter: quantity("share", {
    means: "Organic matter by weight",
    otherwise: "a usual value for the depth",
    within: { from: 0, to: 0.2, says: "0 to 20 %" },
  }).optional(),
  bulkDensity: quantity("density", {
    means: "Dry mass per volume of the fine earth at field capacity",
    otherwise: "that of the layer's `cores`, or the density the texture usually has",
    within: { from: 500, to: 2200, says: "0.5 to 2.2 g/cm^3" },
    mend: weighOrLeaveOut,
  }).optional(),
  gravelVolume: quantity("share", {
    means: "Stones > 2 mm, share of the whole volume",
    otherwise: "none",
    within: { from: 0, to: 0.9, says: "0 to 90 %" },
  }).optional(),
  gravelMass: quantity("share", {
    means: "Stones > 2 mm, share of the whole mass; or give `gravelVolume`",
    within: { from: 0, to: 0.9, says: "0 to 90 %" },
  }).optional(),
  fieldCapacity: quantity("share", {
    means: "Water at field capacity, of the whole volume",
    otherwise: estimated,
    within: water,
  }).optional(),
  wiltingPoint: quantity("share", {
    means: "Water at wilting point, of the whole volume",
    otherwise: estimated,
    within: water,
  }).optional(),
  availableWater: quantity("share", {
    means: "Field capacity less wilting point, of the whole volume, where that is what is known",
    otherwise: "field capacity less wilting point",
    within: water,
  }).optional(),
  saturation: quantity("share", {
    means: "Water at saturation, of the whole volume",
    otherwise: estimated,
    within: water,
  }).optional(),
  saturatedConductivity: quantity("conductivity", {
    means: "Saturated hydraulic conductivity",
    otherwise: estimated,
    within: { from: 0, to: 103_680, above: true, says: "more than 0 and at most 160 in/h (1200 um/s)" },
  }).optional(),
  penetrationResistance: quantity("resistance", {
    means: "Penetrometer reading near field capacity; replaces density as what holds roots back",
    otherwise: "density decides",
    within: resistanceWithin,
  }).optional(),
  penetrationWetness: wetness().optional(),
  structure: choice(soilStructures, "What the penetrometer's limit for roots depends on").optional(),
  origin: choice(
    layerOrigins,
    "What made the layer dense; a natural subsoil has many cracks and old root channels, a pan or track few. Left out: a pan where the layer's top lies within 12 in and it is no thicker than 12 in, natural otherwise",
    {
      pan: "tillage pan",
      "plow pan": "tillage pan",
      plowpan: "tillage pan",
      hardpan: "tillage pan",
      "hard pan": "tillage pan",
      tillage: "tillage pan",
      track: "wheel track",
      traffic: "wheel track",
      wheel: "wheel track",
      "wheel pan": "wheel track",
    },
  ).optional(),
  openShare: quantity("share", {
    means: "Share of the roots that finds cracks and old root channels",
    otherwise: `${percent(usualOpenShare("natural").middle)} in a natural layer, ${percent(usualOpenShare("tillage pan").middle)} in a tillage pan or a wheel track`,
    within: share,
  }).optional(),
  cores: coresField,
  water: text(
    'Water in the layer when the run begins: "22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available"; then every layer needs it',
    60,
  ).optional(),
};

const layerName = text("What the layer is called; cases refer to it by this name", 60);

/** A layer of the base soil. */
export const layerFields = group({ name: layerName, ...layerShape }, "One layer of soil");

/** What differs in a layer of one case. */
const layerPatchFields = group(
  { name: layerName, ...layerShape },
  "A layer of the base soil by its name, and what differs",
);

/** The share of the available water that the soil starts with where nothing is said of it. */
export const usualStart = {
  value: 0.5,
  kind: "share",
  why: "of the available water when the run begins; only a guess, and what the subsoil holds decides what depth is worth: probe it",
} as const;

const startingWaterFields = group(
  {
    share: quantity("share", {
      means: "Share of the available water everywhere: 0 is wilting point, 100 % field capacity",
      within: share,
    }).optional(),
    moistDepth: quantity("depth", {
      means: "Push probe: moist (field capacity) down to this depth; needs `shareBelow`",
      within: soilDepthWithin,
    }).optional(),
    shareBelow: quantity("share", {
      means: "Share of the available water below `moistDepth`, or below the deepest cored layer",
      within: share,
    }).optional(),
    from: choice(
      ["cores"],
      "`cores`: the layers' cores were taken when the run begins; layers below the deepest core get `shareBelow`",
    ).optional(),
  },
  "Water in the soil when the run begins: `share`, or `moistDepth` and `shareBelow`, or `from` cores; or give each layer its `water`. Left out: " +
    `${sayDefault(usualStart)} of the available water, which is only a guess`,
);

const restrictionFields = group(
  {
    depth: quantity("depth", {
      means: "Depth at which soil ends for roots and water storage",
      within: soilDepthAboveZero,
    }),
    kind: choice(restrictionKinds, "What lies there"),
  },
  "What ends the soil. Left out: the last layer's lower edge does",
);

const horizonsFields = group(
  {
    file: text(
      "CSV of horizons, relative to this file: a survey's or laboratory's export, or a table as printed, its units in the header",
      300,
    ),
    component: text("The component to take, by its name or key").optional(),
    pedon: text("The pedon to take, by its name or key").optional(),
  },
  "Layers from a file instead of `layers`",
);

export const soilFields = group(
  {
    layers: list(layerFields, "Layers, top first", { atMost: 60 }).optional(),
    horizons: horizonsFields.optional(),
    restriction: restrictionFields.optional(),
    sliceThickness: withDefault(
      quantity("depth", {
        means: "Thickest slice the layers are cut into for the calculation",
        within: { from: 2, to: mmPerInch, says: "0.08 to 1 in (2 to 25.4 mm)" },
      }),
      25,
      "halving it hardly moves the results",
    ),
    hydrologicGroup: choice(
      ["A", "B", "C", "D"],
      "Hydrologic soil group. Left out: from the slowest layer's conductivity and depth",
    ).optional(),
    startingWater: startingWaterFields.optional(),
    waterMeasured: monthDay(
      'Day on which that water, or the layers\' own, was measured, such as "Mar 12"; runs begin on it. Left out: it is that of the first day of the fallow, or of sowing without one',
    ).optional(),
    penetrometer: penetrometerFields.optional(),
  },
  "The soil column",
);

/** Soil of one case: only what differs. */
export const soilPatchFields = group(
  {
    layers: list(layerPatchFields, "Only the layers that differ, each with its name", {
      atMost: 60,
    }).optional(),
    restriction: restrictionFields.optional(),
    hydrologicGroup: choice(["A", "B", "C", "D"], "Hydrologic soil group").optional(),
    startingWater: startingWaterFields.optional(),
    penetrometer: penetrometerFields.optional(),
  },
  "What differs in the soil",
);
