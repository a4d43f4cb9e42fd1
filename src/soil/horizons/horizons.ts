import { sayQuantity } from "../../quantity/sayQuantity.ts";
import { refuse, refuseSaying } from "../../problem.ts";
import type { Horizon, HorizonFormat } from "./horizonFormat.ts";
import { type HorizonRow, type HorizonTable, readHorizonTable } from "./horizonTable.ts";
import { laboratoryHorizons } from "./laboratoryHorizons.ts";
import type { LayerDescription } from "../layers/layerDescription.ts";
import { printedHorizons, sayInches } from "./printedHorizons.ts";
import { surveyHorizons } from "./surveyHorizons.ts";

/** Every kind of horizon file we read, the first that knows the header taking it. */
const formats: readonly HorizonFormat[] = [surveyHorizons, laboratoryHorizons, printedHorizons];

/** Which profile of the file: a component of a survey, or a pedon of a laboratory; by key or name, any case. */
export interface ProfileChoice {
  readonly component?: string | undefined;
  readonly pedon?: string | undefined;
}

export interface HorizonReading {
  /** Top first, without gap or overlap; what a horizon lacks is left for `resolveLayer` to estimate. */
  readonly layers: readonly LayerDescription[];
  /** `Amarillo TX079 PAaBu (component 1687020)` */
  readonly name: string;
  /** Depth of rock below the last layer, mm; null where the file shows none. */
  readonly restrictedAtMm: number | null;
  /** What is missing, repeated or put aside, in words. */
  readonly notes: readonly string[];
  /** What is hard to believe, in words. */
  readonly doubts: readonly string[];
}

/**
 * Soil that is described less deep than this, mm, with nothing below that ends it, may stand in inches under a column of cm.
 * Ours: surveys describe to 5 ft (152 cm) or more, all 99 components of an open file of them do (read).
 */
const shallowForSurveyMm = 1000;

interface Profile {
  readonly key: string;
  readonly labels: ReadonlySet<string>;
  readonly rows: readonly HorizonRow[];
}

/**
 * One profile out of a CSV of soil horizons as layers.
 *
 * Horizons are sorted; repeated ones are used once; the profile must reach from the surface down without gap or overlap.
 * Where the deepest horizons have no texture (rock), the column ends above them. Everything else wrong is an InputError naming
 * file, line or profile, and the depths.
 */
export function readHorizons(csvText: string, fileName: string, choose: ProfileChoice): HorizonReading {
  const table = readHorizonTable(csvText, fileName);
  const format = formatOf(table);
  const profile = chosenProfile(table, format, profilesOf(table, format), choose);
  const who = `${fileName} ${format.profileWord} ${profile.key}`;

  const horizons = profile.rows
    .map((row) => format.horizon(table, row))
    .sort((a, b) => a.layer.topMm - b.layer.topMm);
  const say = format.saysUnit === true ? sayInches : sayCm;
  checkDepths(horizons, who, say);
  const { kept, restrictedAtMm, notes } = aboveRock(horizons, who, say);
  const endsMm = kept.at(-1)?.layer.bottomMm ?? 0;
  const isShallow =
    format.saysUnit !== true && kept.length === horizons.length && endsMm < shallowForSurveyMm;
  const all = table.rows.filter((row) => format.profileKey(row) === profile.key).length;
  if (all > profile.rows.length) {
    notes.push(
      `${who}: ${all - profile.rows.length} rows repeat a horizon, as one component in several map units does; each is used once`,
    );
  }
  for (const horizon of kept) notes.push(...horizon.notes);
  notes.push(...whatIsMissing(kept.map(({ layer }) => layer)));
  const plainest = [...profile.labels].find((label) => label.includes(" ")) ?? profile.key;
  return {
    layers: kept.map(({ layer }) => layer),
    name: plainest.includes(profile.key) ? plainest : `${plainest} (${format.profileWord} ${profile.key})`,
    restrictedAtMm,
    notes,
    doubts: isShallow
      ? [
          `${who} ends at ${sayCm(endsMm)} (${sayQuantity(endsMm, "depth", "us")}) with no rock below it, which is shallow for a soil survey: its columns mean cm, so write inches as cm.`,
        ]
      : [],
  };
}

/** Every distinct horizon of a file with a texture, whatever profile it is in: for comparing limits, not for a column. */
export function readAllHorizons(csvText: string, fileName: string): readonly LayerDescription[] {
  const table = readHorizonTable(csvText, fileName);
  const format = formatOf(table);
  return profilesOf(table, format)
    .flatMap(({ rows }) => rows.map((row) => format.horizon(table, row).layer))
    .filter(hasTexture);
}

const hasTexture = ({ texture, sandFraction, clayFraction }: LayerDescription): boolean =>
  texture !== undefined || (sandFraction !== undefined && clayFraction !== undefined);

function formatOf(table: HorizonTable): HorizonFormat {
  const { columns, fileName } = table;
  const format = formats.find(({ knows }) => knows(columns));
  if (!format) {
    const known = formats.map(({ name, needed }) => `${name} (${needed.join(", ")})`).join(" or ");
    return refuse(`${fileName} header`, known, columns.join(", "), "give the columns those names");
  }
  const lacking = format.lacks(columns);
  if (lacking.length > 0) {
    refuse(
      `${fileName} header`,
      `the column ${lacking.join(", ")} of ${format.name}`,
      undefined,
      format.orElse ?? "export it as well",
    );
  }
  return format;
}

function profilesOf(table: HorizonTable, format: HorizonFormat): readonly Profile[] {
  const byKey = new Map<string, { labels: Set<string>; rows: Map<string, HorizonRow> }>();
  for (const row of table.rows) {
    const key = format.profileKey(row);
    if (key === "") {
      refuse(
        `${table.fileName} line ${row.line}`,
        `the key of its ${format.profileWord}`,
        undefined,
        "fill it in",
      );
    }
    const profile = byKey.get(key) ?? { labels: new Set(), rows: new Map() };
    byKey.set(key, profile);
    for (const label of format.labels(row)) if (label !== "") profile.labels.add(label);
    const horizon = format.horizonKey(row);
    if (!profile.rows.has(horizon)) profile.rows.set(horizon, row);
  }
  return [...byKey].map(([key, { labels, rows }]) => ({ key, labels, rows: [...rows.values()] }));
}

function chosenProfile(
  { fileName }: HorizonTable,
  { name, profileWord, choiceColumns }: HorizonFormat,
  profiles: readonly Profile[],
  choose: ProfileChoice,
): Profile {
  const other = profileWord === "component" ? "pedon" : "component";
  const wanted = choose[profileWord];
  const nameOne = `name one ${profileWord} or its key (columns ${choiceColumns.join(", ")})`;
  if (wanted === undefined && choose[other] !== undefined) {
    refuse(
      `${fileName} ${other}`,
      `a ${profileWord}: the file holds ${name}`,
      choose[other],
      `choose by ${profileWord}`,
    );
  }
  if (wanted === undefined) {
    const [only] = profiles;
    if (only && profiles.length === 1) return only;
    return refuse(`${fileName} ${profileWord}`, listed(profiles), undefined, nameOne);
  }
  const exact = profiles.filter(({ labels }) => labels.has(wanted.trim()));
  const found =
    exact.length > 0
      ? exact
      : profiles.filter(({ labels }) => [...labels].some((label) => plain(label) === plain(wanted)));
  const [first] = found;
  if (first && found.length === 1) return first;
  const mend = found.length > 1 ? `${found.length} have that name: choose by key` : nameOne;
  return refuse(`${fileName} ${profileWord}`, listed(found.length > 1 ? found : profiles), wanted, mend);
}

const plain = (text: string): string => text.trim().toLowerCase().replaceAll(/\s+/g, " ");

/** An error is one line; the rest is a count. */
const profilesListed = 5;

function listed(profiles: readonly Profile[]): string {
  const shown = profiles.slice(0, profilesListed).map(({ key, labels }) => {
    const label = [...labels].find((text) => text !== key);
    return label === undefined || label.includes(key) ? (label ?? key) : `${label} (${key})`;
  });
  const more = profiles.length > profilesListed ? ` and ${profiles.length - profilesListed} more` : "";
  return `one of ${shown.join(", ")}${more}`;
}

function checkDepths(horizons: readonly Horizon[], who: string, say: (mm: number) => string): void {
  let lastMm = 0;
  let above = "the surface";
  for (const { line, layer } of horizons) {
    const { topMm, bottomMm } = layer;
    if (!(bottomMm > topMm)) {
      const found = `${layer.name} from ${say(topMm)} to ${say(bottomMm)}`;
      refuseSaying(
        `${who} line ${line}`,
        "a bottom depth below the top depth",
        found,
        say === sayCm ? "correct the depths in cm" : "correct the depths",
      );
    }
    if (Math.abs(topMm - lastMm) > 1e-5) {
      const gap = topMm > lastMm;
      const what = gap ? "a gap" : "an overlap";
      const [from, to] = gap ? [lastMm, topMm] : [topMm, lastMm];
      refuseSaying(
        `${who} line ${line}`,
        "horizons that follow one another from the surface down",
        `${what} from ${say(from)} to ${say(to)} between ${above} and ${layer.name}`,
        "correct the depths, or give the layers by hand",
      );
    }
    lastMm = bottomMm;
    above = layer.name;
  }
}

const sayCm = (mm: number): string => (Number.isFinite(mm) ? `${Math.round(mm) / 10} cm` : "no depth");

/** The horizons down to where texture ends for good; a horizon without texture above others is refused. */
function aboveRock(
  horizons: readonly Horizon[],
  who: string,
  say: (mm: number) => string,
): { kept: readonly Horizon[]; restrictedAtMm: number | null; notes: string[] } {
  const last = horizons.findLastIndex(({ layer }) => hasTexture(layer));
  const kept = horizons.slice(0, last + 1);
  const bare = kept.find(({ layer }) => !hasTexture(layer)) ?? (last < 0 ? horizons[0] : undefined);
  if (bare) {
    refuseSaying(
      `${who} line ${bare.line}`,
      "sand and clay for every horizon above the last",
      `none for ${bare.layer.name}`,
      "fill them in, or give the layers by hand",
    );
  }
  const below = horizons[last + 1];
  if (!below) return { kept, restrictedAtMm: null, notes: [] };
  const rock = /^\d?(?:R|Cr)/.test(below.layer.name);
  const depth = say(below.layer.topMm);
  return {
    kept,
    restrictedAtMm: rock ? below.layer.topMm : null,
    notes: [`${who}: no texture from ${depth} down (${below.layer.name}); the column ends there`],
  };
}

/** One line for each property that is missing everywhere or in some horizons. */
function whatIsMissing(layers: readonly LayerDescription[]): string[] {
  const wanted: readonly [string, (layer: LayerDescription) => boolean, string][] = [
    [
      "bulk density",
      (layer) => layer.bulkDensityKgPerM3 !== undefined,
      "the texture's normal one is used, without hindrance",
    ],
    ["organic matter", (layer) => layer.organicMatterPercent !== undefined, "a default is used"],
    [
      "saturated conductivity",
      (layer) => layer.saturatedConductivityMmPerDay !== undefined,
      "it is estimated",
    ],
    [
      "field capacity",
      (layer) => (layer.fieldCapacity ?? layer.availableWater) !== undefined,
      "it is estimated",
    ],
    ["wilting point", (layer) => layer.wiltingPoint !== undefined, "it is estimated"],
    ["stones", (layer) => layer.gravelVolumeFraction !== undefined, "none are assumed"],
  ];
  const said: string[] = [];
  for (const [what, has, instead] of wanted) {
    const lacking = layers.filter((layer) => !has(layer));
    if (lacking.length === 0) continue;
    const where =
      lacking.length === layers.length ? "any horizon" : lacking.map(({ name }) => name).join(", ");
    said.push(`no ${what} in the file for ${where}: ${instead}`);
  }
  return said;
}
