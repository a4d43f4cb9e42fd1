import { drawingFont, ink, pencil } from "../reportStyle.ts";
import { escaped } from "../markup.ts";

/** A drawing of the report: plain SVG text, in a box of `width` by `height`. */
export interface Drawing {
  /** Unique in the report. */
  readonly id: string;
  readonly width: number;
  readonly height: number;
  /** What it shows, in a few words. */
  readonly title: string;
  /** What there is to see, in sentences, for those who do not see it. */
  readonly says: string;
  readonly parts: readonly string[];
}

export function svgOf({ id, width, height, title, says, parts }: Drawing): string {
  return (
    `<svg viewBox="0 0 ${width} ${coordinate(height)}" role="img" aria-labelledby="${id}-title ${id}-says" ` +
    `font-family='${drawingFont}' font-size="10" fill="${ink}">` +
    `<title id="${id}-title">${escaped(title)}</title><desc id="${id}-says">${escaped(says)}</desc>${parts.join("")}</svg>`
  );
}

/** A coordinate, to a hundredth. Throws on what is no number: nothing of that kind is drawn. */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new Error(`a coordinate is ${value}`);
  return String(Number(value.toFixed(2)));
}

interface TextStyle {
  readonly size?: number;
  readonly anchor?: "start" | "middle" | "end";
  readonly fill?: string;
  readonly bold?: boolean;
}

export function textAt(x: number, y: number, text: string, style: TextStyle = {}): string {
  const { size, anchor, fill, bold } = style;
  return (
    `<text x="${coordinate(x)}" y="${coordinate(y)}"${size === undefined ? "" : ` font-size="${size}"`}` +
    `${anchor === undefined ? "" : ` text-anchor="${anchor}"`}${fill === undefined ? "" : ` fill="${fill}"`}` +
    `${bold === true ? ' font-weight="700"' : ""}>${escaped(text)}</text>`
  );
}

export function lineBetween(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  stroke = pencil,
  width = 1,
): string {
  return `<path d="M${coordinate(x1)} ${coordinate(y1)}L${coordinate(x2)} ${coordinate(y2)}" stroke="${stroke}" stroke-width="${width}" fill="none"/>`;
}

export function box(x: number, y: number, width: number, height: number, attributes: string): string {
  return `<rect x="${coordinate(x)}" y="${coordinate(y)}" width="${coordinate(width)}" height="${coordinate(height)}" ${attributes}/>`;
}
