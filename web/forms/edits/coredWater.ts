import { isGroup, isList, type Json } from "../../state/json.ts";
import { getAt } from "../../state/path.ts";
import { layersOf } from "./layerEdits.ts";

/** Whether a core of any layer was weighed wet, so that cores can tell the water at the start, and whether soil lies below the deepest one. */
export function coredWater(scenario: Json): { readonly isWeighed: boolean; readonly hasBelow: boolean } {
  const weighed = layersOf(scenario).map((_, l) => {
    const cores = getAt(scenario, `soil.layers[${l}].cores`);
    return isList(cores) && cores.some((core) => isGroup(core) && core["wetMass"] !== undefined);
  });
  return { isWeighed: weighed.some(Boolean), hasBelow: weighed.lastIndexOf(true) < weighed.length - 1 };
}
