/** Rotations that have a name. */
export const readyRotations = [
  "every year",
  "wheat-fallow",
  "wheat-corn-fallow",
  "wheat-sorghum-fallow",
  "wheat-sunflower-fallow",
] as const;

export type ReadyRotation = (typeof readyRotations)[number];
