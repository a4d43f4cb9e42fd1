import { lookUp } from "../../lookUp.ts";
import { nearestName } from "../../nearestName.ts";
import { refuse, refuseSaying } from "../../problem.ts";
import table3 from "../../../data-reference/saxton-rawls-table3.json" with { type: "json" };

/** The twelve classes of the USDA triangle, coarse to fine. */
export const textureClasses = [
  "sand",
  "loamy sand",
  "sandy loam",
  "loam",
  "silt loam",
  "silt",
  "sandy clay loam",
  "clay loam",
  "silty clay loam",
  "sandy clay",
  "silty clay",
  "clay",
] as const;

export type TextureClass = (typeof textureClasses)[number];

/** Sand and clay of the fine earth (< 2 mm), 0 to 1. */
export interface Texture {
  readonly sandFraction: number;
  readonly clayFraction: number;
}

/**
 * USDA texture class of a fine earth.
 *
 * @param sandFraction 0.05 to 2 mm, 0 to 1
 * @param clayFraction below 0.002 mm, 0 to 1; sand + clay at most 1
 * @returns one of `textureClasses`; every point of the triangle belongs to exactly one. Outside the triangle: InputError.
 * @example textureClass(0.2, 0.15) // "silt loam"
 * Source: [Soil Survey Manual, ch. 3] class definitions, memory. A point on a line goes where the definitions' "or more" and
 * "less than" put it.
 */
export function textureClass(sandFraction: number, clayFraction: number): TextureClass {
  const inside = sandFraction >= 0 && clayFraction >= 0 && sandFraction + clayFraction <= 1 + 1e-9;
  if (!inside) {
    refuseSaying(
      "texture",
      "sand and clay from 0 to 100 % that together make at most 100 %",
      `sand ${percent(sandFraction)}, clay ${percent(clayFraction)}`,
      "check both shares",
    );
  }
  // Rounded so that 0.85 x 100 lies on the line and not a hair beside it.
  const sand = tidy(sandFraction * 100);
  const clay = tidy(clayFraction * 100);
  const silt = tidy(100 - sand - clay);

  if (tidy(silt + 1.5 * clay) < 15) return "sand";
  if (tidy(silt + 2 * clay) < 30) return "loamy sand";
  if (clay >= 40) {
    if (silt >= 40) return "silty clay";
    return sand > 45 ? "sandy clay" : "clay";
  }
  if (clay >= 35 && sand > 45) return "sandy clay";
  if (clay >= 27) {
    if (sand <= 20) return "silty clay loam";
    return sand <= 45 ? "clay loam" : "sandy clay loam";
  }
  if (clay >= 20 && silt < 28) return "sandy clay loam";
  if (silt >= 80 && clay < 12) return "silt";
  if (silt >= 50) return "silt loam";
  return clay >= 7 && sand <= 52 ? "loam" : "sandy loam";
}

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6;
const percent = (share: number): string => `${tidy(share * 100)} %`;

/** Sand and clay that stand for a class when only its name is known. Source: [Saxton & Rawls 2006] Table 3, memory. */
export function centralTexture(name: TextureClass): Texture {
  const row = table3.find(({ inputs }) => inputs.textureClass === name);
  if (!row) throw new Error(`no central texture for ${name}`);
  return { sandFraction: row.inputs.sandPercent / 100, clayFraction: row.inputs.clayPercent / 100 };
}

/** The survey's short codes, without the size of the sand. */
const codes: Readonly<Record<string, TextureClass>> = {
  s: "sand",
  ls: "loamy sand",
  sl: "sandy loam",
  l: "loam",
  sil: "silt loam",
  si: "silt",
  scl: "sandy clay loam",
  cl: "clay loam",
  sicl: "silty clay loam",
  sc: "sandy clay",
  sic: "silty clay",
  c: "clay",
};

/**
 * Class meant by a text: any case, spaces, hyphens or underscores, the survey's codes (`SiCL`), and names with the size
 * of the sand (`very fine sandy loam` is a sandy loam). Null when it is none.
 */
export function readTextureClass(text: string): TextureClass | null {
  const words = text
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, " ");
  const code = /^(l?)(?:vf|f|co)?(s|sl)$/.exec(words);
  const named = lookUp(codes, words) ?? (code ? codes[`${code[1]}${code[2]}`] : undefined);
  if (named) return named;
  const unsized = words.replaceAll(/\b(?:very fine|fine|medium|coarse) (?=sand)/g, "");
  return textureClasses.find((name) => name === unsized) ?? null;
}

/** How to mend a text that is no class. */
export function textureMend(text: string): string {
  const near = nearestName(text, textureClasses);
  return near === null ? "name one of these, or give sand and clay in percent" : `did you mean "${near}"?`;
}

/** As `readTextureClass`, but refuses what is no class and says which is near. */
export function textureClassNamed(text: string, field: string): TextureClass {
  return (
    readTextureClass(text) ??
    refuse(field, `a USDA texture class (${textureClasses.join(", ")})`, text, textureMend(text))
  );
}
