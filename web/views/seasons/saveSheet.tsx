import { render, type VNode } from "preact";
import { saveText, saveUrl, svgText, svgToPng } from "../../pictures/kit/download.ts";
import { palette } from "../../pictures/kit/palette.ts";
import { defaults } from "../../pictures/answer/seasonMultiples.tsx";

/** Draws a sheet beside the page for as long as it takes to save it. */
export async function saveSheet(sheet: VNode, fileName: string, format: "png" | "svg"): Promise<void> {
  const place = document.createElement("div");
  place.setAttribute("aria-hidden", "true");
  place.style.cssText = "position:fixed;left:-100000px;top:0";
  document.body.append(place);
  try {
    render(sheet, place);
    const svg = place.querySelector("svg");
    if (svg === null) return;
    svg.setAttribute("aria-label", defaults.name); // its title, once it is saved
    if (format === "svg") saveText(`${fileName}.svg`, svgText(svg), "image/svg+xml");
    else saveUrl(`${fileName}.png`, await svgToPng(svg, palette().paper));
  } finally {
    render(null, place);
    place.remove();
  }
}
