/**
 * For a key, the others of its group that it makes void, as they are other ways of saying the same. A form that writes a key
 * takes them out, a case that gives it does not keep the base's, and where both are written in one place it is a fault.
 */
export type Voids<K extends string = string> = Readonly<Partial<Record<K, readonly K[]>>>;

/** Ways of saying the same, each by one key or by several together. */
function ways<const K extends string>(...all: readonly (readonly K[])[]): Readonly<Record<K, readonly K[]>> {
  const others = (own: readonly K[]) => all.filter((way) => way !== own).flat();
  const voids: Partial<Record<K, readonly K[]>> = {};
  for (const way of all) for (const key of way) voids[key] = others(way);
  return voids as Record<K, readonly K[]>;
}

/** How long a crop takes. */
const cropLength = ways(["ripe"], ["harvest"], ["maturity"], ["stageLengths", "stageDays"]);

export const alternatives = {
  layer: {
    ...ways(["texture"], ["sand", "clay"]),
    ...ways(["thickness"], ["bottom"]),
    ...ways(["gravelVolume"], ["gravelMass"]),
  },
  core: ways(["volume"], ["diameter", "length"]),
  startingWater: {
    share: ["moistDepth", "shareBelow", "from"],
    moistDepth: ["share", "from"],
    shareBelow: ["share"],
    from: ["share", "moistDepth"],
  },
  /** Written together, that of the period goes before that for both. */
  surface: {
    residueCover: ["residueCoverFallow", "residueCoverCrop"],
    curveNumber: ["curveNumberFallow", "curveNumberCrop"],
  },
  cropLength,
  crop: { ...cropLength, ...ways(["stand"], ["population", "fullPopulation"]) },
  weather: ways(["annualRain"], ["seasonRain"]),
  countedRows: {
    ...ways(["rows"], ["implementWidth", "rowSpacing"]),
    ...ways(["tyreRows"], ["rowsInTrack", "rowsBesideTrack"]),
  },
  countedGround: ways(["area"], ["rowLength", "rows"]),
  kernelWeight: ways(["kernelWeight"], ["kernelsPerBushel"], ["kernelsPerPound"], ["season"]),
} as const;

/** What stands together in one layer, but of a case takes the base's out. */
const ofBase = {
  availableWater: ["fieldCapacity"],
  fieldCapacity: ["availableWater"],
  wiltingPoint: ["availableWater"],
  // A reading was taken in the density of the base; in another it says nothing.
  bulkDensity: ["penetrationResistance", "penetrationWetness"],
  penetrationResistance: ["penetrationWetness"],
} as const;

/** A case's layer over the base's. */
export const layerOverBase: Voids = { ...alternatives.layer, ...ofBase };

/** Cores of a case measure its own density; they leave the water alone, which only startingWater may take from cores. */
export const coredLayerOverBase: Voids = {
  ...layerOverBase,
  cores: ["bulkDensity", "penetrationResistance", "penetrationWetness"],
};

/** Whether a key is given together with one that it makes void. */
export function isSaidTwice<K extends string>(
  part: Readonly<Partial<Record<NoInfer<K>, unknown>>>,
  key: NoInfer<K>,
  voids: Voids<K>,
): boolean {
  return part[key] !== undefined && (voids[key] ?? []).some((other) => part[other] !== undefined);
}
