import type { Problem } from "../../../src/problem.ts";
import { goToField, leafOf } from "../goToField.ts";
import { forThePage, placeInWords } from "../../forms/placeWords.ts";
import { LeaveOut } from "../../forms/leaveOut.tsx";
import { parsePath } from "../../state/path.ts";
import { edit, scenario, valueAt } from "../../state/scenarioStore.ts";
import { problems, stale } from "../../worker/client.ts";
import { goToProblem } from "./cardPlan.ts";

/** Everything that is wrong, on top, each a way to its field. */
export function ProblemList() {
  const list = problems.value;
  if (list.length === 0) return null;
  return (
    <div class="problem-list" role="group" aria-label="What has to be mended">
      <p>
        <strong>
          {list.length === 1 ? "One thing has" : `${list.length} things have`} to be mended
          {stale.value ? "; until then the last good answer stands." : "."}
        </strong>
      </p>
      <LeaveOut />
      <ul>
        {list.map((problem) => (
          <li key={`${problem.field} ${problem.expected}`}>
            <button type="button" class="as-link" onClick={() => goTo(problem)}>
              {placeInWords(problem.field, scenario.value)}
            </button>
            : expected {forThePage(problem.expected)}, found {problem.found}; {forThePage(problem.mend)}.{" "}
            <TakeOut problem={problem} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** What is entered "In the field" is mended there. */
function goTo(problem: Problem): void {
  if (leafOf(problem.field) === null) goToProblem(problem);
  else goToField(problem);
}

/** For a key that has no field on the page, as none knows it. */
function TakeOut({ problem: { field, expected } }: { problem: Problem }) {
  const unknown = expected.startsWith("one of the keys") || expected === "a key that belongs here";
  if (!unknown || parsePath(field) === null || valueAt(field) === undefined) return null;
  return (
    <button type="button" class="small" onClick={() => edit(field, undefined, "chosen", `take out ${field}`)}>
      Take it out
    </button>
  );
}
