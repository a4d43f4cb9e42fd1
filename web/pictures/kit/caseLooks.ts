import { px } from "./handDrawn.ts";

/** Dashes by case, so that lines are told apart without colour; those in px are drawn as they are written. */
export const caseDashes = [
  "solid",
  "dash",
  "dot",
  "dashdot",
  "longdash",
  "2px,10px",
  "16px,4px,2px,4px,2px,4px",
  "5px,3px,5px,11px",
  "3px,3px",
  "22px,4px,8px,4px",
] as const;
/** Marks by case, likewise. */
export const caseMarks = [
  "circle",
  "diamond",
  "square",
  "triangle-up",
  "cross",
  "triangle-down",
  "x",
  "star",
  "hourglass",
  "bowtie",
] as const;

export type CaseDash = (typeof caseDashes)[number];
export type CaseMark = (typeof caseMarks)[number];

/** What tells a case apart where there is no colour: ten marks and ten dashes; after them no pair of the two comes again. */
export function caseLook(c: number): { readonly dash: CaseDash; readonly mark: CaseMark } {
  const again = Math.floor(c / caseMarks.length);
  return {
    dash: caseDashes[(c + again) % caseDashes.length]!,
    mark: caseMarks[c % caseMarks.length]!,
  };
}

/** Dashes as SVG draws them. */
export const strokeDashes: Readonly<Record<CaseDash, string | undefined>> = {
  solid: undefined,
  dash: "9 5",
  dot: "2 5",
  dashdot: "9 4 2 4",
  longdash: "15 5",
  "2px,10px": "2 10",
  "16px,4px,2px,4px,2px,4px": "16 4 2 4 2 4",
  "5px,3px,5px,11px": "5 3 5 11",
  "3px,3px": "3 3",
  "22px,4px,8px,4px": "22 4 8 4",
};

/** From the middle to the top of a star of five, then from corner to corner, in radii. */
const starTips = Array.from({ length: 10 }, (_, i) => {
  const corner = (n: number) => {
    const radius = n % 2 === 0 ? 1.4 : 0.58;
    return [radius * Math.sin((Math.PI * n) / 5), -radius * Math.cos((Math.PI * n) / 5)] as const;
  };
  const [x, y] = corner(i);
  const [lastX, lastY] = i === 0 ? [0, 0] : corner(i - 1);
  return [x - lastX, y - lastY] as const;
});

/** The mark of a case about a place; all look equally large. */
export function markPath(mark: CaseMark, x: number, y: number, radiusPx: number): string {
  const at = `M${px(x)} ${px(y)}`;
  const r = (times: number) => px(radiusPx * times);
  switch (mark) {
    case "circle":
      return `${at}m${r(-1)} 0a${r(1)} ${r(1)} 0 1 0 ${r(2)} 0a${r(1)} ${r(1)} 0 1 0 ${r(-2)} 0z`;
    case "diamond":
      return `${at}m0 ${r(-1.25)}l${r(1.25)} ${r(1.25)}l${r(-1.25)} ${r(1.25)}l${r(-1.25)} ${r(-1.25)}z`;
    case "square":
      return `${at}m${r(-0.94)} ${r(-0.94)}h${r(1.88)}v${r(1.88)}h${r(-1.88)}z`;
    case "triangle-up":
      return `${at}m0 ${r(-1.13)}l${r(1.25)} ${r(2.13)}h${r(-2.5)}z`;
    case "triangle-down":
      return `${at}m0 ${r(1.13)}l${r(1.25)} ${r(-2.13)}h${r(-2.5)}z`;
    case "x":
      return `${at}m0 ${r(-0.53)}l${r(0.6)} ${r(-0.6)}l${r(0.53)} ${r(0.53)}l${r(-0.6)} ${r(0.6)}l${r(0.6)} ${r(0.6)}l${r(-0.53)} ${r(0.53)}l${r(-0.6)} ${r(-0.6)}l${r(-0.6)} ${r(0.6)}l${r(-0.53)} ${r(-0.53)}l${r(0.6)} ${r(-0.6)}l${r(-0.6)} ${r(-0.6)}l${r(0.53)} ${r(-0.53)}z`;
    case "star":
      return `${at}${starTips.map(([dx, dy], i) => `${i === 0 ? "m" : "l"}${r(dx)} ${r(dy)}`).join("")}z`;
    case "hourglass":
      return `${at}m${r(-1.1)} ${r(-1.1)}h${r(2.2)}l${r(-2.2)} ${r(2.2)}h${r(2.2)}z`;
    case "bowtie":
      return `${at}m${r(-1.1)} ${r(-1.1)}v${r(2.2)}l${r(2.2)} ${r(-2.2)}v${r(2.2)}z`;
    case "cross":
      return `${at}m${r(-0.375)} ${r(-1.125)}h${r(0.75)}v${r(0.75)}h${r(0.75)}v${r(0.75)}h${r(-0.75)}v${r(0.75)}h${r(-0.75)}v${r(-0.75)}h${r(-0.75)}v${r(-0.75)}h${r(0.75)}z`;
  }
}
