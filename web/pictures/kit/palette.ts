import { isDark } from "../../state/theme.ts";
import { caseLook, type CaseDash, type CaseMark } from "./caseLooks.ts";

/**
 * Colours, dashes and words of all pictures, in one place. Cases differ in lightness and in dash as well as in hue, and the
 * hues are an orange-brown and a blue first, which no common kind of colour blindness takes for each other.
 */
export interface Palette {
  readonly paper: string;
  readonly ink: string;
  /** Axes, labels beside the matter. */
  readonly pencil: string;
  readonly rule: string;
  readonly rain: string;
  readonly snow: string;
  /** By case, in the order of the scenario; more cases begin again, with other dashes and marks. */
  readonly cases: readonly string[];
  /** The user's own range, behind everything. */
  readonly asked: string;
  /** Dry to full, for plant-available water; read as a Plotly colour scale. */
  readonly water: readonly (readonly [number, string])[];
  /** Soil by texture: coarse to fine. */
  readonly soil: Readonly<Record<string, string>>;
  /** Where roots slow. */
  readonly pan: string;
  readonly stale: string;
}

const light: Palette = {
  paper: "#fbf7ec",
  ink: "#2b2622",
  pencil: "#5d554c",
  rule: "#d9cfbb",
  rain: "#2f6f9f",
  snow: "#8fa9bb",
  cases: ["#a8480b", "#125e8f", "#6a4a8c", "#4d6a1f", "#8f1f4e"],
  asked: "rgba(168, 132, 62, 0.16)",
  water: [
    [0, "#efe3c8"],
    [0.25, "#c9d3b4"],
    [0.5, "#86b3b0"],
    [0.75, "#4585a3"],
    [1, "#1d4f7c"],
  ],
  soil: soilColours(0),
  pan: "#5b1f12",
  stale: "#8a5a00",
};

const dark: Palette = {
  paper: "#211d19",
  ink: "#f1e9da",
  pencil: "#b9ad9c",
  rule: "#48413a",
  rain: "#7fb6de",
  snow: "#c6d6e2",
  cases: ["#f0934e", "#74b9e6", "#c3a4e6", "#a9c46c", "#ec87b0"],
  asked: "rgba(226, 186, 104, 0.16)",
  water: [
    [0, "#3a3026"],
    [0.25, "#4a5648"],
    [0.5, "#3f7478"],
    [0.75, "#4d97b8"],
    [1, "#9bd0ef"],
  ],
  soil: soilColours(-0.28),
  pan: "#ffb199",
  stale: "#f0c060",
};

/** The palette of what is on show; read inside a component or `computed`, it follows the switch. */
export function palette(): Palette {
  return isDark.value ? dark : light;
}

/** The one for paper, whatever the screen shows. */
export const printPalette = light;

export interface CaseStyle {
  readonly color: string;
  readonly dash: CaseDash;
  readonly mark: CaseMark;
}

export function caseStyle(c: number, { cases }: Palette = palette()): CaseStyle {
  return { color: cases[c % cases.length]!, ...caseLook(c) };
}

/** Words that pictures share. */
export const words = {
  depth: "Depth below the surface",
  available: "Plant-available water",
  shareFull: "share of what the soil can hold",
  front: "Root front",
  rain: "Rain",
  extraWater: "Extra water taken up",
  extraYield: "Extra yield",
  ruleOfThumb: "Rule of thumb",
  stored: "Stored there at sowing",
  used: "Taken up by the crop",
} as const;

export const fontFamily = 'ui-sans-serif, system-ui, "Segoe UI", "Noto Sans", sans-serif';

/** Earth from coarse, pale and yellow, to fine, dark and red. */
function soilColours(lighter: number): Record<string, string> {
  const classes: readonly (readonly [string, number, number, number])[] = [
    ["sand", 42, 46, 76],
    ["loamy sand", 40, 42, 71],
    ["sandy loam", 37, 40, 65],
    ["sandy clay loam", 28, 40, 57],
    ["sandy clay", 22, 40, 52],
    ["loam", 33, 34, 56],
    ["silt loam", 35, 30, 61],
    ["silt", 37, 28, 66],
    ["clay loam", 26, 34, 50],
    ["silty clay loam", 28, 28, 52],
    ["silty clay", 24, 28, 46],
    ["clay", 18, 34, 43],
  ];
  return Object.fromEntries(
    classes.map(([name, hue, saturation, lightness]) => [
      name,
      `hsl(${hue} ${saturation}% ${Math.round(lightness * (1 + lighter))}%)`,
    ]),
  );
}
