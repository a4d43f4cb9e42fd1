import * as z from "zod";
import { cropFields, cropPatchFields } from "./cropFields.ts";
import { choice, fault, group, latitude, list, quantity, text, wholeNumber, yesOrNo } from "./fields.ts";
import { spreads } from "../../soil/equations/availableWaterSpread.ts";
import { percent } from "../../soil/layers/layerRanges.ts";
import { scenarioFormat } from "../read/format.ts";
import { evidenceFields } from "./evidenceFields.ts";
import { moneyFields } from "./moneyFields.ts";
import { caseOutlookFields, outlookFields } from "./outlook/outlookFields.ts";
import { chainFields, rotationFields } from "./rotationFields.ts";
import { rowPositionsFields } from "./rowPositionsFields.ts";
import { rootingDepth } from "./rootingDepthField.ts";
import { soilFields, soilPatchFields } from "./soilFields.ts";
import { elevationRange } from "./elevationRange.ts";
import { surfaceFields } from "./surfaceFields.ts";
import { weatherFields } from "./weatherFields.ts";
import { rootDepthWithin, seedWithin, usualSeed, usualYears, yearsWithin } from "./facts/limits.ts";
import { withDefault } from "./facts/withDefault.ts";
import { yieldFields } from "./yieldFields.ts";

/** The whole scenario file. Read through it, quantities are SI numbers; see `scenario.ts` for what becomes of them. */

export const siteFields = group(
  {
    latitude: latitude(
      'Latitude, such as "38.5 N" or -33.2 (south). Left out: the station\'s own',
    ).optional(),
    elevation: quantity("elevation", {
      means: "Elevation",
      otherwise: "the station's own",
      within: elevationRange,
    }).optional(),
    setting: withDefault(
      choice(["inland", "coastal"], "For radiation from temperature (FAO-56 eq. 50)"),
      "inland",
      "dryland lies inland; for radiation from temperature (FAO-56 eq. 50)",
    ),
  },
  "The place",
);

export const fallowFields = group(
  {
    length: withDefault(
      quantity("duration", {
        means: "Time without a crop before sowing that is simulated too, so that stored water is a result",
        within: { from: 0, to: 1100, says: "0 to 36 months" },
      }),
      0,
      "the run starts at sowing with the starting water",
    ),
  },
  "Fallow before sowing",
);

export const modelFields = group(
  {
    uptake: withDefault(
      choice(["by slice", "root-zone average"], "How roots take water; the second is FAO-56's form"),
      "by slice",
      "so that a deeper root never makes a day's uptake smaller",
    ),
    evaporation: withDefault(
      choice(
        ["two-stage", "dual coefficient"],
        "How the soil dries at the surface; the second is FAO-56's form",
      ),
      "two-stage",
      "measured soil dries with the square root of time (Ritchie 1972)",
    ),
  },
  "Choices between published methods",
);

const mostNotes = 200;
const longestNote = 2000;

const ours = "our choice";

export const ensembleFields = group(
  {
    years: withDefault(
      wholeNumber("Weather years run for each rainfall total", ...yearsWithin),
      usualYears,
      ours,
    ),
    seed: withDefault(
      wholeNumber("The same seed gives the same draws", ...seedWithin),
      usualSeed,
      "any number will do",
    ),
    availableCapacitySpread: quantity("share", {
      means: "Standard deviation of every layer's available water capacity, share of it",
      otherwise: `by layer: ${percent(spreads.estimated)} of the soil's volume where estimated from texture, ${percent(spreads.measured)} where measured`,
      within: { from: 0, to: 0.5, says: "0 to 50 %" },
    }).optional(),
    deepWaterSpread: withDefault(
      quantity("share", {
        means: "Standard deviation of the deep starting water, share of available capacity",
        within: { from: 0, to: 0.5, says: "0 to 50 %" },
      }),
      0.1,
      `standard deviation; ${ours}`,
    ),
    deepBelow: withDefault(
      quantity("depth", {
        means: "Where deep starts",
        within: rootDepthWithin,
      }),
      610,
      ours,
    ),
    deepUptakeSpread: withDefault(
      quantity("share", {
        means:
          "How unsure the depth is over which uptake falls to half: with 100 %, from half of it to twice",
        within: { from: 0, to: 4, says: "0 to 400 %" },
      }),
      1,
      "what is published on it is far apart: from half the depth to twice; ours",
    ),
    density: withDefault(
      choice(
        ["range", "strict", "usual", "lenient"],
        "How a bulk density is read as hindrance to roots; range draws between strict and lenient",
      ),
      "range",
      "between a strict and a lenient reading of the handbook's densities",
    ),
  },
  "How uncertain things are drawn",
);

const caseFields = group(
  {
    name: text("What the case is called", 60),
    rootingDepth: rootingDepth(
      'Where the roots stop: "34 in" or, in a later case, "+2 in" against the first. They grow through the case\'s own soil, and where it does not let them get there they end above it. Against a first case whose depth is left out, "+2 in" takes that case\'s roots of the same season and stretches them to end so much deeper. Left out: the roots grow through what lies beneath them',
    ).optional(),
    soil: soilPatchFields.optional(),
    surface: surfaceFields.optional(),
    crop: cropPatchFields.optional(),
    fallow: fallowFields.optional(),
    model: modelFields.optional(),
    outlook: caseOutlookFields.optional(),
  },
  "One of what is compared: only what differs from the rest of the file",
);

export const scenarioFileFields = group(
  {
    format: z
      .literal(scenarioFormat, {
        error: () => fault(`"${scenarioFormat}"`, `write "format": "${scenarioFormat}"`),
      })
      .describe("What kind of file this is"),
    $schema: z
      .string({ error: () => fault("text", "write it between quotes") })
      .optional()
      .describe("Path of the JSON Schema, for editors"),
    name: text("What the scenario is called"),
    invented: withDefault(yesOrNo("True when the data are made up"), false),
    notes: z
      .union(
        [text("A note", longestNote), list(text("A note", longestNote), "Notes", { atMost: mostNotes })],
        {
          error: ({ input }) =>
            Array.isArray(input) && input.length > mostNotes
              ? fault(`at most ${mostNotes} notes`, `take ${input.length - mostNotes} out, or join some`)
              : fault(
                  `a text of 1 to ${longestNote} letters, or a list of such texts`,
                  "write each between quotes, and shorten a long one",
                ),
        },
      )
      .optional()
      .describe("For people; nothing is read from it"),
    site: siteFields.optional(),
    soil: soilFields,
    weather: weatherFields,
    crop: cropFields,
    rotation: rotationFields.optional(),
    chain: chainFields.optional(),
    fallow: fallowFields.optional(),
    surface: surfaceFields.optional(),
    cases: list(
      caseFields,
      "What is compared, the first with each of the others. Left out: one case, as described",
      { atMost: 20 },
    ).optional(),
    yield: yieldFields.optional(),
    ensemble: ensembleFields.optional(),
    model: modelFields.optional(),
    money: moneyFields.optional(),
    evidence: evidenceFields.optional(),
    rowPositions: rowPositionsFields.optional(),
    outlook: outlookFields.optional(),
  },
  'A rootfront scenario. Quantities are text with a unit ("14 in", "1.42 g/cm^3") or a bare number in the unit the field names.',
);

export type ScenarioFile = z.output<typeof scenarioFileFields>;
export type SoilPart = z.output<typeof soilFields>;
export type SoilPatch = z.output<typeof soilPatchFields>;
export type LayerPart = NonNullable<SoilPart["layers"]>[number];
export type LayerPatch = NonNullable<SoilPatch["layers"]>[number];
export type StartingWaterPart = NonNullable<SoilPart["startingWater"]>;
export type WeatherPart = z.output<typeof weatherFields>;
export type CropPart = z.output<typeof cropFields>;
export type SurfacePart = z.output<typeof surfaceFields>;
export type YieldPart = z.output<typeof yieldFields>;
export type ModelPart = z.output<typeof modelFields>;
export type EnsemblePart = z.output<typeof ensembleFields>;
export type SitePart = z.output<typeof siteFields>;
export type EvidencePart = z.output<typeof evidenceFields>;
export type CasePart = z.output<typeof caseFields>;
