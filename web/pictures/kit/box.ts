/** A part of a picture, in its own pixels. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Which days and depths a picture shows. */
export interface Window {
  /** From the season's first day; `toDay` is the first one left out. */
  readonly fromDay: number;
  readonly toDay: number;
  readonly depthMm: number;
}

export function dayX({ x, width }: Box, { fromDay, toDay }: Window, day: number): number {
  return x + ((day - fromDay) / (toDay - fromDay)) * width;
}

export function depthY({ y, height }: Box, { depthMm }: Pick<Window, "depthMm">, mm: number): number {
  return y + (mm / depthMm) * height;
}

export function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
