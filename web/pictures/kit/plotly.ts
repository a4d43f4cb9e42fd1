import type { Dash, Data, Layout, PlotDatum, PlotlyHTMLElement } from "plotly.js-dist-min";
import type { CaseDash } from "./caseLooks.ts";
import { fontFamily, palette } from "./palette.ts";

/** What a chart is made of: a picture's pure function returns one. */
export interface Figure {
  readonly data: readonly Data[];
  readonly layout: Partial<Layout>;
}

/** The charts' code takes lengths in px too; its types know its words alone. */
export const chartDash = (dash: CaseDash): Dash => dash as Dash;

export type { Data, Layout, PlotDatum, PlotlyHTMLElement };
export type Plotly = typeof import("plotly.js-basic-dist-min");

let loading: Promise<Plotly> | null = null;

/**
 * The charts' code, fetched when the first chart is about to be drawn. The part with scatter and bars alone: a quarter of the
 * whole, and on a slow machine the first chart stands seconds earlier.
 */
export function loadPlotly(): Promise<Plotly> {
  loading ??= import("plotly.js-basic-dist-min").then(
    (module) => ("default" in module ? module.default : module) as unknown as Plotly,
  );
  return loading;
}

/** No cloud button, no toolbar: the page has buttons of its own that work by keyboard. */
export const plotConfig = {
  displayModeBar: false,
  showSendToCloud: false,
  responsive: false,
  scrollZoom: false,
} as const;

/** What all charts share; a figure's own layout goes over it, axes key by key. Reads the palette, so it follows the theme. */
export function withBase({ data, layout }: Figure): { data: Data[]; layout: Partial<Layout> } {
  const { ink, pencil, rule } = palette();
  const axis = {
    gridcolor: rule,
    linecolor: pencil,
    zerolinecolor: pencil,
    tickcolor: pencil,
    automargin: true,
  };
  const axes = [
    "xaxis",
    "yaxis",
    ...Object.keys(layout).filter((key) => /^[xy]axis\d+$/.test(key)),
  ] as "xaxis"[];
  return {
    data: [...data],
    layout: {
      paper_bgcolor: "rgba(0,0,0,0)",
      plot_bgcolor: "rgba(0,0,0,0)",
      margin: { l: 56, r: 16, t: 16, b: 44 },
      legend: { orientation: "h", y: 1.12, x: 0 },
      hoverlabel: { font: { family: fontFamily } },
      dragmode: false,
      ...layout,
      font: { family: fontFamily, color: ink, size: 14, ...layout.font },
      ...Object.fromEntries(axes.map((key) => [key, { ...axis, ...layout[key] }])),
    },
  };
}
