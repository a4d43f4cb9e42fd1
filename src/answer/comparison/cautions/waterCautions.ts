import type { Scenario } from "../../../scenario/scenario.ts";
import type { Uncautioned } from "../comparison.ts";

/** What an answer of years in a row rests on, and what of the scenario it does not carry through them yet. */
export function yearsCautions({ rotation, evidence, money, rowPositions }: Scenario): string[] {
  const start = rotation!.startsAsStated
    ? "Every chain of years begins with the water that the scenario states."
    : "Nothing measured says what the subsoil holds: every chain of years begins with what the years before left. Probe or core it, and this year's answer is surer.";
  const others = [
    ...new Set(rotation!.entries.flatMap((entry) => (entry === null || entry.isAsked ? [] : [entry.crop]))),
  ];
  return [
    start,
    "Roots stated for a case are those of the crop in question; the other crops of the rotation root as the soil lets them. No field is tilled between crops: residue lies as it was cut, or as stated.",
    ...(money === null || others.length === 0
      ? []
      : [
          `Money counts the years in which ${rotation!.entries.find((entry) => entry?.isAsked)!.crop} is harvested, as its price is the one told: what ${others.join(" and ")} gains or loses is left out.`,
        ]),
    ...(rowPositions === null
      ? []
      : ["The field by its rows is told for the years after the first; money takes the first year too."]),
    ...(evidence === null
      ? []
      : [
          "Not carried through the years yet: what was measured. It is answered with the years after the first, as single seasons.",
        ]),
  ];
}

/** The subsoil's water decides: say how it was known, and send to the field where it was only assumed. */
export function subsoilCaution({ cases }: Scenario): { said: string[]; sendsToTheField: boolean } {
  const kinds = new Set(cases.map(({ startingWater }) => startingWater.kind));
  const decides = "How much water the subsoil holds at the start decides what deeper roots are worth";
  if (!kinds.has("share")) {
    return {
      said: [`${decides}; here it is what you entered, below the reach of later rain.`],
      sendsToTheField: false,
    };
  }
  return {
    said: [
      `${decides}: deep soil that is dry, or refills only in wet years, is worth next to nothing. Here it is an assumed share, not a measurement: probe or core the subsoil and enter what you find.`,
    ],
    sendsToTheField: true,
  };
}

/**
 * Below this share of its precipitation a simulated fallow stored less than measured ones do: the lower ends of tilled and
 * untilled fallow over ten seasons were 8 and 20 %, [Nielsen & Vigil 2010] abstract (read).
 */
const usualFallowShare = 0.2;

/** The trials were on fallows of 14 months: those of fewer than so many days are another thing. Ours. */
const wholeFallowDays = 300;

/** Fallow as simulated may store little, for want of winter storage most of all. Say so beside the trials. */
export function fallowCaution({ cases }: Uncautioned, scenario: Scenario): string[] {
  const shares = cases.flatMap(({ fallowStorageShare }, c) =>
    scenario.cases[c]!.fallowDays < wholeFallowDays ? [] : (fallowStorageShare ?? []),
  );
  if (shares.length === 0 || Math.min(...shares) >= usualFallowShare) return [];
  const percent = (share: number) => Math.round(100 * share);
  const [least, most] = [percent(Math.min(...shares)), percent(Math.max(...shares))];
  return [
    `Over the fallow, ${least === most ? least : `${least} to ${most}`} % of the precipitation was stored. Trials of 14 months at Akron, Colorado, stored 20 % with tillage (8 to 34) and 35 % without (20 to 51) (Nielsen & Vigil 2010), so the subsoil is probably wetter than here. Water measured at sowing, in place of the fallow, makes the answer surer.`,
  ];
}
