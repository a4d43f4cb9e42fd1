import { isGroup } from "../../state/json.ts";
import { scenario, scenarioName } from "../../state/scenarioStore.ts";
import { fontFamily, palette } from "./palette.ts";
import { wrapped } from "../../../src/drawing/text.ts";

/** Hands a text to the person as a file. */
export function saveText(fileName: string, text: string, type: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  saveUrl(fileName, url);
  // The download has its own hold on the data by then.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

export function saveUrl(fileName: string, url: string): void {
  const link = document.createElement("a");
  link.href = url;
  link.download = fileName;
  document.body.append(link);
  link.click();
  link.remove();
}

/** What a picture is called once it is away from the page: what it shows, and of which scenario. */
export function pictureTitle(name: string): readonly [what: string, of: string] {
  const written = scenario.peek();
  const invented = isGroup(written) && written["invented"] === true ? " (invented data)" : "";
  return [name.split(": ")[0] ?? name, `${scenarioName.peek()}${invented}`];
}

/** From one line of a saved picture's title to the next, in the picture's own units. */
export const titleLinePx = 18;

/** The title of a saved picture, broken into lines that its width holds, each with its size of type. */
export function titleLines(name: string, width: number): { text: string; sizePx: 15 | 12 }[] {
  const [what, of] = pictureTitle(name);
  return [
    ...wrapped(what, width - 16, 15).map((text) => ({ text, sizePx: 15 as const })),
    ...wrapped(of, width - 16, 12).map((text) => ({ text, sizePx: 12 as const })),
  ];
}

/** Room for the title over a saved picture, in the picture's own units. */
export function titleRoomPx(name: string, width: number): number {
  return 10 + titleLinePx * titleLines(name, width).length;
}

interface AloneDrawing {
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

/**
 * An SVG drawing as it can stand alone: with its size, its font, its paper and a title. Colours must stand in its attributes.
 * A drawing without a name has its title within.
 */
function standingAlone(svg: SVGSVGElement): AloneDrawing {
  const { paper, ink, pencil } = palette();
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const { x, y, width, height } = svg.viewBox.baseVal;
  const name = svg.getAttribute("aria-label");
  const above = name === null ? 0 : titleRoomPx(name, width);
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  copy.setAttribute("viewBox", `${x} ${y - above} ${width} ${height + above}`);
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height + above));
  copy.setAttribute("font-family", fontFamily);
  const sheet = element("rect", { x, y: y - above, width, height: height + above, fill: paper });
  const parts: SVGElement[] = [sheet];
  if (name !== null) {
    const [, of] = pictureTitle(name);
    const lines = titleLines(name, width);
    parts.unshift(element("title", {}, `${name}. ${of}`));
    parts.push(
      ...lines.map(({ text, sizePx }, i) => {
        const look = sizePx === 15 ? { "font-weight": 600, fill: ink } : { fill: pencil };
        const at = { x: x + 8, y: y - above + 20 + titleLinePx * i };
        return element("text", { ...at, "font-size": sizePx, ...look }, text);
      }),
    );
  }
  copy.prepend(...parts);
  const text = `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
  return { text, width, height: height + above };
}

function element(tag: string, attributes: Readonly<Record<string, string | number>>, text = ""): SVGElement {
  const made = document.createElementNS("http://www.w3.org/2000/svg", tag);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, String(value));
  made.textContent = text;
  return made;
}

/** An SVG drawing as a file's text. */
export function svgText(svg: SVGSVGElement): string {
  return standingAlone(svg).text;
}

/** An SVG drawing as PNG, twice as large for sharpness, on paper colour. */
export async function svgToPng(svg: SVGSVGElement, paper: string): Promise<string> {
  const { text, width, height } = standingAlone(svg);
  const url = URL.createObjectURL(new Blob([text], { type: "image/svg+xml" }));
  try {
    const image = new Image(width, height);
    image.src = url;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(2 * width);
    canvas.height = Math.round(2 * height);
    const pen = canvas.getContext("2d");
    if (pen === null) throw new Error("this browser draws no pictures");
    pen.fillStyle = paper;
    pen.fillRect(0, 0, canvas.width, canvas.height);
    pen.drawImage(image, 0, 0, canvas.width, canvas.height);
    return canvas.toDataURL("image/png");
  } finally {
    URL.revokeObjectURL(url);
  }
}
