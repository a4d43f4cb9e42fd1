import table from "../../../data-reference/flowering-stress.json";

/** Days from flowering, first and last, both counted. */
export type FloweringWindow = readonly [from: number, to: number];

/** Three windows around flowering; together the six weeks that decide. See `data-reference/flowering-stress.json`. */
export const floweringWindows = {
  before: table.before as unknown as FloweringWindow,
  at: table.at as unknown as FloweringWindow,
  after: table.after as unknown as FloweringWindow,
};

/** Share of the demand met up to which a crop around flowering is outside what a yield line knows. */
export const starvedUpTo: number = table.starvedUpTo;

/** Share of the yield lost where the crop gets next to nothing in a window. */
export interface FloweringLoss {
  readonly before: number;
  readonly at: number;
  readonly after: number;
  readonly source: string;
}

/** Share of its demand that a crop met in each window, 0 to 1. */
export interface FloweringMet {
  readonly metBeforeFlowering: number;
  readonly metAtFlowering: number;
  readonly metAfterFlowering: number;
}

/** The published loss of a crop by its name in the crop table; null where there is none. */
export function floweringLossOf(crop: string): FloweringLoss | null {
  const found = table.losses.find((one) => one.crop === crop);
  if (found === undefined) return null;
  const { before, at, after, source, mark } = found;
  return { before, at, after, source: `${source} (${mark})` };
}

/**
 * How much of the published loss a window brings, 0 to 1: 0 from half of the demand met on, growing with the square of what
 * lacks, 1 where nothing is met. The form is ours: lines come from crops that met about half.
 *
 * @param met share of the demand met, 0 to 1
 * @example stressSeverity(0.25) // 0.25
 */
export function stressSeverity(met: number): number {
  const lacking = Math.max(0, 1 - met / table.fedFrom);
  return lacking * lacking;
}

/**
 * Share of the yield that is left after stress around flowering, 0 to 1. Losses of the windows multiply (ours).
 *
 * Source: [Claassen & Shaw 1970] (abstract, read) for corn.
 */
export function shareLeftByStress(loss: FloweringLoss, met: FloweringMet): number {
  return (
    (1 - loss.before * stressSeverity(met.metBeforeFlowering)) *
    (1 - loss.at * stressSeverity(met.metAtFlowering)) *
    (1 - loss.after * stressSeverity(met.metAfterFlowering))
  );
}
