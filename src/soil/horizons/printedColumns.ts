import { refuse } from "../../problem.ts";
import { mmPerInch } from "../../quantity/constants.ts";
import type { HorizonTable } from "./horizonTable.ts";

/** The columns of a soil table as web pages and reports print them: a plain word, and the unit in the header. */

export type PrintedProperty =
  | "top"
  | "bottom"
  | "depth"
  | "horizon"
  | "soil"
  | "texture"
  | "sand"
  | "silt"
  | "clay"
  | "organic matter"
  | "bulk density"
  | "AWC"
  | "stones"
  | "Ksat";

interface Printed {
  /** Words that a header calls it by, without its unit. */
  readonly called: RegExp;
  /** By unit as written in headers: what makes it ours. None = a text. */
  readonly units?: Readonly<Record<string, number>>;
  /** The unit it has where a header names none; left out: the header must say. */
  readonly bare?: string;
  /** For messages. */
  readonly suchAs: string;
}

const toMm = { in: mmPerInch, inches: mmPerInch, inch: mmPerInch, '"': mmPerInch, cm: 10, mm: 1 };
const toShare = { "%": 0.01, pct: 0.01, percent: 0.01 };

/** The first that a header fits takes it. */
const printed: Readonly<Record<PrintedProperty, Printed>> = {
  top: {
    called: /^(?:(?:horizon |layer )?(?:top|upper)(?: depth)?|depth top)$/,
    units: toMm,
    suchAs: "Top (in)",
  },
  bottom: {
    called: /^(?:(?:horizon |layer )?(?:bottom|bot|lower)(?: depth)?|depth bottom)$/,
    units: toMm,
    suchAs: "Bottom (in)",
  },
  depth: { called: /^depths?$/, units: toMm, suchAs: "Depth (in)" },
  horizon: { called: /^(?:horizon|layer)(?: name)?$|^hzname$|^designation$/, suchAs: "Horizon" },
  soil: { called: /^(?:soil|soil name|component|component name|map unit)$/, suchAs: "Soil" },
  texture: { called: /^(?:usda )?texture(?: class)?$/, suchAs: "Texture" },
  sand: { called: /^(?:total )?sand$/, units: toShare, suchAs: "Sand %" },
  silt: { called: /^(?:total )?silt$/, units: toShare, suchAs: "Silt %" },
  clay: { called: /^(?:total )?clay$/, units: toShare, suchAs: "Clay %" },
  "organic matter": {
    called: /^(?:organic matter|om)$/,
    units: { "%": 1, pct: 1, percent: 1 },
    suchAs: "Organic matter %",
  },
  "bulk density": {
    called: /^(?:moist )?(?:bulk density|bd)$/,
    units: { "g/cm3": 1000, "g/cm^3": 1000, "g/cm³": 1000, "g/cc": 1000, "mg/m3": 1000, "kg/m3": 1 },
    // 0.05 to 2.65 is no other unit's.
    bare: "g/cm3",
    suchAs: "Bulk density (g/cm3)",
  },
  AWC: {
    called: /^(?:awc|available water(?: (?:capacity|storage))?)$/,
    units: { "in/in": 1, "cm/cm": 1, "in/ft": 1 / 12, "%": 0.01, pct: 0.01, percent: 0.01 },
    // Printed as a length over the same length.
    bare: "in/in",
    suchAs: "AWC (in/in)",
  },
  stones: {
    called: /^(?:stones|rock fragments|fragments|gravel)(?: by volume)?$/,
    units: toShare,
    suchAs: "Stones %",
  },
  Ksat: {
    called: /^(?:ksat|saturated (?:hydraulic )?conductivity)$/,
    units: {
      "um/s": 86.4,
      "µm/s": 86.4,
      "μm/s": 86.4,
      "in/hr": 24 * mmPerInch,
      "in/h": 24 * mmPerInch,
      "cm/hr": 240,
      "mm/hr": 24,
    },
    suchAs: "Ksat (in/hr)",
  },
};

export interface PrintedColumn {
  /** As in the table, lower case. */
  readonly column: string;
  /** What a number of it is multiplied with; 1 of texts. */
  readonly factor: number;
  readonly unit: string;
}

/** `"top (in)"` → `top` in `in`; the unit in brackets, after a comma, or a % beside the word. Null where it is none of these. */
export function printedProperty(column: string): { property: PrintedProperty; unit: string } | null {
  const { word, unit } = apart(column);
  const found = Object.entries(printed).find(([, { called }]) => called.test(word));
  return found === undefined ? null : { property: found[0] as PrintedProperty, unit };
}

function apart(column: string): { word: string; unit: string } {
  const plain = column
    .toLowerCase()
    .replaceAll(/[\s_]+/g, " ")
    .trim();
  const bracketed = /^([^([]+?) ?[([]\s*([^)\]]+?)\s*[)\]]$/.exec(plain);
  if (bracketed) return { word: bracketed[1]!, unit: bracketed[2]! };
  const comma = /^([^,]+), ?(\S+)$/.exec(plain);
  if (comma) return { word: comma[1]!, unit: comma[2]! };
  const before = /^(%|pct|percent) ?(.+)$/.exec(plain);
  if (before) return { word: before[2]!, unit: before[1]! };
  const after = /^(.+?) ?(%| pct| percent| in| inches| cm| mm)$/.exec(plain);
  return after ? { word: after[1]!, unit: after[2]!.trim() } : { word: plain, unit: "" };
}

/** Each property's column, once. A header without the unit it needs, or with an unknown one: InputError. */
export function printedColumns({ columns, fileName }: HorizonTable): Map<PrintedProperty, PrintedColumn> {
  const found = new Map<PrintedProperty, PrintedColumn>();
  for (const column of columns) {
    const known = printedProperty(column);
    if (known === null) continue;
    const { property } = known;
    const { units, bare, suchAs } = printed[property];
    const at = `${fileName} header`;
    const before = found.get(property);
    if (before !== undefined)
      refuse(at, `one column of ${property}`, `${before.column}, ${column}`, "drop one of them");
    if (units === undefined) {
      found.set(property, { column, factor: 1, unit: "" });
      continue;
    }
    const unit = known.unit === "" ? (bare ?? "") : known.unit;
    const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
    if (factor === undefined)
      refuse(
        at,
        `the unit of ${property} in its header: ${Object.keys(units).join(", ")}`,
        column,
        `write it such as "${suchAs}"`,
      );
    else found.set(property, { column, factor, unit });
  }
  return found;
}

/** For the message that tells which files are read. */
export const printedNeeded = [printed.top, printed.bottom, printed.sand, printed.clay, printed.AWC].map(
  ({ suchAs }) => suchAs,
);
