import type { ComponentChildren } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { isDark, isPrinting } from "../../state/theme.ts";
import { PictureFrame, type PictureTable } from "./frame.tsx";
import { saveUrl, titleLinePx, titleLines, titleRoomPx } from "./download.ts";
import { palette } from "./palette.ts";
import {
  loadPlotly,
  plotConfig,
  withBase,
  type Figure,
  type Layout,
  type PlotDatum,
  type Plotly,
  type PlotlyHTMLElement,
} from "./plotly.ts";

/** What both Letter and A4 leave within the margins of print.css, CSS pixels. */
const paperPx = 660;

export interface PlotProps {
  /** What the chart shows, in a sentence: its accessible name. */
  readonly name: string;
  readonly figure: Figure;
  readonly table: PictureTable;
  /** Without ending. */
  readonly fileName: string;
  readonly caption?: ComponentChildren;
  /** Height in CSS pixels; the width is the room there is. */
  readonly height?: number;
  readonly faint?: boolean;
  readonly onPick?: (point: PlotDatum) => void;
  readonly onHover?: (point: PlotDatum | null) => void;
}

/** A chart: drawn again whenever its figure, the room for it or the theme changes. */
export function Plot({
  name,
  figure,
  table,
  fileName,
  caption,
  height = 360,
  faint = false,
  onPick,
  onHover,
}: PlotProps) {
  const place = useRef<HTMLDivElement>(null);
  const plotly = usePlotly();
  const hears = useRef({ onPick, onHover });
  hears.current = { onPick, onHover };
  const dark = isDark.value;

  useLayoutEffect(() => {
    if (plotly === null || place.current === null) return;
    draw(plotly, place.current, figure, height);
  }, [plotly, figure, height, dark]);

  useEffect(() => {
    const element = place.current;
    if (plotly === null || element === null) return undefined;
    const chart = element as unknown as PlotlyHTMLElement;
    chart.on("plotly_click", ({ points: [point] }) => point && hears.current.onPick?.(point));
    chart.on("plotly_hover", ({ points: [point] }) => point && hears.current.onHover?.(point));
    chart.on("plotly_unhover", () => hears.current.onHover?.(null));
    let width = element.clientWidth;
    const watch = new ResizeObserver(() => {
      if (element.clientWidth === width || element.clientWidth === 0) return;
      width = element.clientWidth;
      void plotly.relayout(element, { width });
    });
    watch.observe(element);
    // No observer is asked before a page is printed, and paper is narrower than most screens.
    const toPaperOrBack = () => void plotly.relayout(element, { width: roomOf(element) });
    addEventListener("beforeprint", toPaperOrBack);
    addEventListener("afterprint", toPaperOrBack);
    return () => {
      removeEventListener("beforeprint", toPaperOrBack);
      removeEventListener("afterprint", toPaperOrBack);
      watch.disconnect();
      plotly.purge(element);
    };
  }, [plotly]);

  const save = (format: "png" | "svg") => {
    if (plotly === null || place.current === null) return;
    const { clientWidth: width } = place.current;
    const { data, layout } = withBase(figure);
    const whole = { width, height: height + titleRoomPx(name, width) };
    const onPaper = {
      ...layout,
      ...titled(name, layout, width),
      ...whole,
      paper_bgcolor: palette().paper,
    };
    void plotly
      .toImage({ data, layout: onPaper }, { format, ...whole, scale: format === "png" ? 2 : 1 })
      .then((url) => saveUrl(`${fileName}.${format}`, url));
  };

  return (
    <PictureFrame
      name={name}
      caption={caption}
      table={table}
      faint={faint}
      onSavePng={() => save("png")}
      onSaveSvg={() => save("svg")}
    >
      <div
        ref={place}
        class="plot"
        role="img"
        aria-label={name}
        data-drawn={plotly === null ? undefined : "yes"}
        style={{ height: `${height}px` }}
      />
    </PictureFrame>
  );
}

/** A title over a chart that leaves the page, line by line: the chart's own title is cut where it has two. */
function titled(name: string, { margin, annotations }: Partial<Layout>, width: number): Partial<Layout> {
  const lines = titleLines(name, width);
  const room = titleRoomPx(name, width);
  const above = margin?.t ?? 0;
  const plain = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  return {
    annotations: [
      ...(annotations ?? []),
      ...lines.map(({ text, sizePx }, i) => ({
        xref: "paper" as const,
        yref: "paper" as const,
        x: 0,
        xanchor: "left" as const,
        xshift: 8 - (margin?.l ?? 0),
        y: 1,
        yanchor: "top" as const,
        yshift: above + room - 2 - i * titleLinePx,
        text: plain(text),
        showarrow: false,
        font: { size: sizePx },
      })),
    ],
    margin: { ...margin, t: above + room },
  };
}

/** How wide a chart may be, CSS pixels. */
function roomOf({ clientWidth }: HTMLElement): number {
  return isPrinting.peek() ? Math.min(clientWidth, paperPx) : clientWidth;
}

function draw(plotly: Plotly, element: HTMLDivElement, figure: Figure, height: number): void {
  const { data, layout } = withBase(figure);
  void plotly.react(element, data, { ...layout, width: roomOf(element), height }, plotConfig);
}

function usePlotly(): Plotly | null {
  const [plotly, setPlotly] = useState<Plotly | null>(null);
  useEffect(() => {
    let wanted = true;
    void loadPlotly().then((loaded) => wanted && setPlotly(() => loaded));
    return () => {
      wanted = false;
    };
  }, []);
  return plotly;
}
