import { kinds, type QuantityKind } from "../../src/quantity/kinds.ts";
import { units } from "../state/view.ts";

/** A number without a unit that a file brought counts in the file's own unit, whatever units are shown: said, with the way out. */
export function BareNote({
  text,
  kind,
  onMend,
}: {
  text: string;
  kind: QuantityKind;
  onMend: (text: string) => void;
}) {
  const { bare } = kinds[kind];
  if (bare === null || !/^\s*[+\u2212-]?[\d.][\d.,]*\s*$/.test(text)) return null;
  const isShare = bare === "1";
  // A whole percentage without its sign is refused, in words of its own.
  if (isShare && !(Number(text) < 1)) return null;
  const { unit } = kinds[kind][units.value];
  const spelt = isShare ? `${Number((100 * Number(text)).toPrecision(6))} %` : bare.replace("deg", "");
  return (
    <p class="field-bare">
      Without a unit it counts as {spelt}.{" "}
      {unit !== spelt && (
        <button type="button" class="small" onClick={() => onMend(`${text.trim()} ${unit}`)}>
          Make it {text.trim()} {unit}
        </button>
      )}
    </p>
  );
}
