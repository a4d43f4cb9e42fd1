import type { ResolvedCase } from "../../worker/protocol.ts";

/** What the lesson asks: by what sets the two cases apart, as the scenario tells them, not by the answer. */

/** `one`: there is no other case. */
export type Subject = "one" | "depth" | "density" | "surface" | "water" | "else";

type Told = Pick<ResolvedCase, "layers" | "rooting" | "ground" | "startingWater" | "crop" | "fallowDays">;

/** What differs between two cases; more than one thing at once is something else. */
export function subjectOf(first: Told | undefined, other: Told | undefined): Subject {
  if (first === undefined || other === undefined) return "one";
  const differs = (of: (one: Told) => unknown) => JSON.stringify(of(first)) !== JSON.stringify(of(other));
  const all: Subject[] = [];
  if (other.rooting.kind === "relative" || differs(({ rooting }) => rooting)) all.push("depth");
  const isDenser = differs(passages);
  if (isDenser) all.push(differs(makeup) ? "else" : "density");
  else if (differs(makeup)) all.push("else");
  // Runoff of a dense soil follows from its density.
  if (differs(({ ground }) => (isDenser ? withoutCurveNumbers(ground) : ground))) all.push("surface");
  // Water told by layer as a share of what it can hold follows from the density.
  const follows = isDenser && [first, other].every(({ startingWater }) => startingWater.kind === "by layer");
  if (!follows && differs(({ startingWater }) => startingWater)) all.push("water");
  if (differs(({ crop, fallowDays }) => [crop, fallowDays])) all.push("else");
  return all.length === 1 ? all[0]! : "else";
}

function withoutCurveNumbers(ground: Told["ground"]): unknown {
  const { curveNumberFallow: _, curveNumberCrop: __, curveNumberBareFallow: ___, ...rest } = ground;
  return rest;
}

/** How dense the layers are, and what that leaves of the pace. */
function passages({ layers }: Told): unknown {
  return layers.map(({ bulkDensityKgPerM3, hindrance, openShare }) => [
    bulkDensityKgPerM3,
    hindrance,
    openShare,
  ]);
}

/** What the layers are and where they lie, but for their density. */
function makeup({ layers }: Told): unknown {
  return layers.map(({ topMm, bottomMm, sandFraction, clayFraction, gravelVolumeFraction }) => [
    topMm,
    bottomMm,
    sandFraction,
    clayFraction,
    gravelVolumeFraction,
  ]);
}

/** Over the lesson and the handout. */
export const titles: Readonly<Record<Subject, string>> = {
  one: "How deep do roots get?",
  depth: "What is a difference in root depth worth?",
  density: "What does a dense layer cost?",
  surface: "What is cover on the ground worth?",
  water: "What is water in the soil at the start worth?",
  else: "What sets two crops apart?",
};

/** The layer that the lesson is about, and whether soil lies below it. */
export interface LayerAsked {
  readonly name: string;
  readonly isLast: boolean;
}

/** To think about before the fold; none is answered by the page alone. */
export function questionsFor(subject: Subject, layer: LayerAsked | null): readonly string[] {
  const drySeason = "Would you expect deeper roots to be worth more in a dry season or in a wet one? Why?";
  switch (subject) {
    case "density":
      return [
        layer === null || layer.isLast
          ? "How does water get down to where only the deepest roots reach, and in which years does it not?"
          : `How does water get down to the soil below “${layer.name}”, and in which years does it not?`,
        drySeason,
        "What lets roots through a dense layer, what does it cost, and how would you know that it paid?",
      ];
    case "surface":
      return [
        "By which ways does rain get lost before it is in the soil, and which of them does cover on the ground change?",
        "In which years would cover be worth most: with what rain, at what time of the year? Why?",
        "What else could the cover be used for, and how would you know whether leaving it paid?",
      ];
    case "water":
      return [
        "How would you find out in the field how much water the soil holds before sowing, and how deep?",
        "In which years does the water at the start matter least? Why?",
        "Roots must reach that water to use it: what could stop them?",
      ];
    default:
      return [
        "Is there water at the depth that only the deeper roots reach? How did it get there, and in which years does it not?",
        drySeason,
        "What could make roots go deeper in a field, what would it cost, and how would you know that it paid?",
      ];
  }
}
