import { attachments, replace, scenario } from "../state/scenarioStore.ts";
import { problems } from "../worker/client.ts";
import { partsInTheWay, withoutParts } from "./edits/partsInTheWay.ts";

/** Another crop may fit neither the counts nor the price: the water's answer need not wait until they are mended. */
export function LeaveOut() {
  const left = partsInTheWay(problems.value, scenario.value);
  if (left.length === 0) return null;
  const said = left.map((part) => part.said).join(left.length === 2 ? " and " : ", ");
  return (
    <button
      type="button"
      class="small"
      onClick={() => replace(withoutParts(scenario.value, left), attachments.value, `leave out ${said}`)}
    >
      Answer without {said}
    </button>
  );
}
