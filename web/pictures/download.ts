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

/** An SVG drawing as a file's text; styles must stand in its attributes. */
export function svgText(svg: SVGSVGElement): string {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  copy.setAttribute("xmlns", "http://www.w3.org/2000/svg");
  return `<?xml version="1.0" encoding="UTF-8"?>\n${new XMLSerializer().serializeToString(copy)}\n`;
}

/** An SVG drawing as PNG, twice as large for sharpness, on paper colour. */
export async function svgToPng(svg: SVGSVGElement, paper: string): Promise<string> {
  const { width, height } = svg.getBoundingClientRect();
  const url = URL.createObjectURL(new Blob([svgText(svg)], { type: "image/svg+xml" }));
  try {
    const image = new Image(width, height);
    image.src = url;
    await image.decode();
    const canvas = document.createElement("canvas");
    canvas.width = 2 * width;
    canvas.height = 2 * height;
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
