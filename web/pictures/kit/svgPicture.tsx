import type { ComponentChildren } from "preact";
import { useRef } from "preact/hooks";
import { saveText, saveUrl, svgText, svgToPng } from "./download.ts";
import { PictureFrame, type PictureTable } from "./frame.tsx";
import { palette } from "./palette.ts";

export interface SvgPictureProps {
  /** What the picture shows, in a sentence: its accessible name. */
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly table: PictureTable;
  /** Without ending. */
  readonly fileName: string;
  readonly caption?: ComponentChildren;
  readonly faint?: boolean;
  /** SVG elements, in a box of `width` by `height`; colours as attributes, so that a saved file has them. */
  readonly children: ComponentChildren;
}

/** A drawing of our own; as wide as there is room. */
export function SvgPicture({
  name,
  width,
  height,
  table,
  fileName,
  caption,
  faint = false,
  children,
}: SvgPictureProps) {
  const drawing = useRef<SVGSVGElement>(null);
  return (
    <PictureFrame
      name={name}
      caption={caption}
      table={table}
      faint={faint}
      onSavePng={() => {
        if (drawing.current === null) return;
        void svgToPng(drawing.current, palette().paper).then((url) => saveUrl(`${fileName}.png`, url));
      }}
      onSaveSvg={() => {
        if (drawing.current !== null) saveText(`${fileName}.svg`, svgText(drawing.current), "image/svg+xml");
      }}
    >
      <svg ref={drawing} viewBox={`0 0 ${width} ${height}`} role="img" aria-label={name} class="svg-picture">
        {children}
      </svg>
    </PictureFrame>
  );
}
