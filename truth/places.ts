import file from "../data-reference/scoreboard/places.json" with { type: "json" };
import type { Written } from "./seasons.ts";

export type Place = (typeof file.places)[number];

export function placeNamed(id: string): Place {
  const place = file.places.find((one) => one.id === id);
  if (place === undefined) throw new Error(`no place ${id}`);
  return place;
}

/** Site of a place as a scenario writes it. */
export const siteOf = ({ latitude, elevation }: Place): Written => ({ latitude, elevation });

/** Years are generated from the place's monthly means. */
export const normalsOf = ({ rainMm, tMaxC, tMinC }: Place): Written => ({
  monthlyNormals: {
    rain: rainMm.map((mm) => `${mm} mm`),
    tMax: tMaxC.map((c) => `${c} C`),
    tMin: tMinC.map((c) => `${c} C`),
  },
});

/** The place's soil in one layer. */
export const layersOf = ({ texture }: Place, thickness = "72 in"): Written[] => [
  { name: texture, thickness, texture },
];
