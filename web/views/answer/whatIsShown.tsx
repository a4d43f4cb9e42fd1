import { fieldInALine } from "../../../src/report/sentences/fieldInALine.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { answers } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { resolved } from "../../worker/client.ts";

/** What this is, and of which field: for someone who has never seen it. Five answers stand in the form itself. */
export function WhatIsShown() {
  const soil = resolved.value;
  if (answers.value !== null || soil === null) return null;
  const field = fieldInALine(soil.cases[0]!, shownIn(units.value));
  return (
    <p class="answer-what">
      What deeper roots are worth. {soil.invented ? <em>Invented example:</em> : "Your field:"} {field}.
    </p>
  );
}
