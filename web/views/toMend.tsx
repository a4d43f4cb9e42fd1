import { forThePage, placeInWords } from "../forms/placeWords.ts";
import { scenario } from "../state/scenarioStore.ts";
import { addressOf, viewTitles } from "../state/view.ts";
import { problems } from "../worker/client.ts";
import { goToField, leafOf } from "./goToField.ts";
import { leafTitles } from "./field/leafTitles.ts";

/** What has to be mended first, and the leaf where it stands; for a place that waits for it. */
export function ToMend() {
  const [first] = problems.value;
  if (first === undefined) return <>undo the last change first</>;
  const leaf = leafOf(first.field);
  const where = leaf === null ? viewTitles.inputs : `${viewTitles.field}, ${leafTitles[leaf]}`;
  return (
    <>
      to be mended first, in{" "}
      <a
        href={addressOf(leaf === null ? "inputs" : "field")}
        title={forThePage(first.mend)}
        onClick={(event) => {
          event.preventDefault();
          goToField(first);
        }}
      >
        {where}
      </a>
      : {placeInWords(first.field, scenario.value)}
    </>
  );
}
