/**
 * A name that every file system takes, without ending.
 * @example fileNameOf("Grain sorghum over a plough pan, silt loam") // "grain-sorghum-over-a-plough-pan-silt-loam"
 */
export function fileNameOf(name: string): string {
  const plain = name
    .normalize("NFKD")
    .replace(/[^\w]+/g, "-")
    .replace(/^-+|-+$/g, "")
    .toLowerCase()
    .slice(0, 60);
  return plain === "" ? "scenario" : plain;
}
