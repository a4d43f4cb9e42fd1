import type { ComponentChildren } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { isDark, isPrinting } from "../shell/theme.ts";
import { PictureFrame, type PictureTable } from "./frame.tsx";
import { pictureTitle, saveUrl, titlePx } from "./download.ts";
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
    const whole = { width, height: height + titlePx };
    const onPaper = {
      ...layout,
      ...titled(name, layout, whole.height),
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

/** A title over a chart that leaves the page. */
function titled(name: string, { margin }: Partial<Layout>, height: number): Partial<Layout> {
  const [what, of] = pictureTitle(name);
  const plain = (text: string) => text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
  return {
    title: {
      text: `${plain(what)}<br><sub>${plain(of)}</sub>`,
      font: { size: 15 },
      x: 0.01,
      xanchor: "left",
      y: 1 - 8 / height,
      yanchor: "top",
      yref: "container",
    },
    margin: { ...margin, t: (margin?.t ?? 0) + titlePx },
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
