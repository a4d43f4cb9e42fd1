/** Rotations that have a name. */
export const readyRotations = [
  "every year",
  "wheat-fallow",
  "wheat-corn-fallow",
  "wheat-sorghum-fallow",
  "wheat-sunflower-fallow",
] as const;

export type ReadyRotation = (typeof readyRotations)[number];

/** The crop that the question is about where nothing but the rotation is named. */
export const cropAskedOf: Readonly<Partial<Record<ReadyRotation, string>>> = {
  "wheat-fallow": "winter wheat",
  "wheat-corn-fallow": "corn",
  "wheat-sorghum-fallow": "grain sorghum",
  "wheat-sunflower-fallow": "sunflower",
};
