import densityTable from "../../../data-reference/bulk-density-factor.json" with { type: "json" };
import curveNumbers from "../../../data-reference/curve-numbers.json" with { type: "json" };
import cropTable from "../../../data-reference/crops.json" with { type: "json" };
import penetrationTable from "../../../data-reference/penetration-factor.json" with { type: "json" };
import frozenGround from "../../../data-reference/frozen-ground.json" with { type: "json" };
import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import saxtonRawls from "../../../data-reference/saxton-rawls-table3.json" with { type: "json" };
import { cropNamed } from "../../crop/crops.ts";
import type { Case } from "../../scenario/scenario.ts";
import { escaped, list } from "./markup.ts";
import type { ReportInput, Section } from "./reportInput.ts";

/** A published source, what was taken from it, and whether it was read or is from memory. */
interface SourceUsed {
  readonly what: string;
  readonly source: string;
  /** Null where the source's own words carry it. */
  readonly mark: string | null;
}

/** The published sources that this very answer stands on. */
export const sources: Section = (input) => ({
  heading: "Sources",
  body:
    `<div class="fine">${list(sourcesUsed(input).map(sourceSaid))}</div>` +
    "<p>“read”: we had the source, or as much of it as is named, before us; “memory”: taken from memory and still to be checked against it.</p>",
});

export function sourcesUsed({ scenario, comparison }: ReportInput): SourceUsed[] {
  const { cases, weather } = scenario;
  const any = (holds: (one: Case) => boolean): boolean => cases.some(holds);
  const hinderedBy = (basis: string) =>
    any(({ layers }) => layers.some(({ hindrance }) => hindrance.basis === basis));
  const isEstimated = comparison.defaults.some(({ field }) =>
    /\.(?:fieldCapacity|wiltingPoint|saturation)$/.test(field),
  );
  const books = cropTable.sources;
  return [
    {
      what: `Reference ET, basal crop coefficients and stages${any(({ evaporation }) => evaporation === "dual coefficient") ? ", evaporation from the soil" : ""}`,
      source: books["FAO-56"],
      mark: "read",
    },
    ...(any(({ evaporation }) => evaporation === "two-stage")
      ? [{ what: "Evaporation from the soil", source: books["Ritchie 1972"], mark: "read in part" }]
      : []),
    { what: "Runoff by curve number", source: curveNumbers.source, mark: curveNumbers.provenance },
    {
      what: "Curve numbers of dry and wet soil",
      source: curveNumbers.wetness.source,
      mark: curveNumbers.wetness.provenance,
    },
    {
      what: "Snow melt by degree days",
      source: "USDA NRCS (2004). National Engineering Handbook, Part 630 Hydrology, ch. 11 Snowmelt",
      mark: "memory",
    },
    {
      what: "Frozen ground and the melt it lets in; how residue rots",
      source: `${frozenGround.brief}; Renard et al. 1997, USDA Agriculture Handbook 703`,
      mark: frozenGround.intake.provenance,
    },
    {
      what: isEstimated ? "Water limits from texture, and drainage" : "Drainage",
      source: saxtonRawls[0]!.source,
      mark: saxtonRawls[0]!.provenance,
    },
    ...(hinderedBy("bulk density")
      ? [
          {
            what: "Roots slowed by density",
            source: densityTable[0]!.source,
            mark: "read; Pierce et al. memory",
          },
        ]
      : []),
    ...(hinderedBy("penetration resistance")
      ? penetrationTable.slice(0, 2).map(({ source, provenance }) => ({
          what: "Roots slowed by penetration resistance",
          source,
          mark: provenance,
        }))
      : []),
    ...(any(({ crop }) => crop.frontVelocityMmPerDay === null) ? [descentSource(cases[0].crop.name)] : []),
    {
      what: "Roots held back by dry soil",
      source: books["Kirkegaard & Lilley 2007"],
      mark: "read; the straight line is ours",
    },
    ...(any(({ uptake }) => uptake.rule === "by slice")
      ? [
          { what: "Water uptake", source: books["Monteith 1986"], mark: "memory" },
          {
            what: "Share of its water that a layer gives a day",
            source: books["Dardanelli et al. 2004"],
            mark: "memory",
          },
          {
            what: "Uptake falling with depth",
            source: books["Gerwitz & Page 1974"],
            mark: "abstract read; how fast is ours",
          },
        ]
      : []),
    ...(any(({ uptake }) => uptake.rule === "root-zone average")
      ? [
          {
            what: "Water uptake by root-zone average",
            source: `${books["FAO-56"]}, eq. 82 to 84`,
            mark: "read",
          },
        ]
      : []),
    ...(weather.source.kind === "normals"
      ? [
          {
            what: "Generated temperatures",
            source: generator.residuals.source,
            mark: generator.residuals.provenance,
          },
          {
            what: "Generated rain",
            source: generator.cited.source,
            mark: generator.cited.provenance,
          },
        ]
      : []),
    ...yieldLineSource(comparison.method.yieldLine),
  ];
}

/** Of our crops the study that its descent names first; a crop of one's own follows the general curve. */
function descentSource(crop: string): SourceUsed {
  const why = cropNamed(crop)?.values.descent.why ?? "";
  const [named] = Object.entries(cropTable.sources)
    .filter(([key]) => why.includes(key))
    .sort(([a], [b]) => why.indexOf(a) - why.indexOf(b));
  const [key, source] = named ?? ["Borg & Grimes 1986", cropTable.sources["Borg & Grimes 1986"]];
  const mark = key.startsWith("Borg") ? "memory" : "read";
  return { what: "Descent of the root front", source, mark };
}

/** Its own text carries its marks already. */
function yieldLineSource({ source }: ReportInput["comparison"]["method"]["yieldLine"]): SourceUsed[] {
  return [{ what: "Yield from water", source, mark: null }];
}

function sourceSaid({ what, source, mark }: SourceUsed): string {
  const marked = mark === null ? "" : ` (${mark})`;
  return escaped(`${what}: ${source.replace(/\.$/, "")}${marked}.`);
}
