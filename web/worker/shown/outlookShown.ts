import { outlookOf } from "../../../src/answer/outlook/outlookOf.ts";
import { outlookByDay } from "../../../src/answer/outlook/waterAhead.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import { outlookLines } from "../../../src/report/sentences/outlookLine.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import type { OutlookShown } from "../protocol.ts";

/** The season under way as the page shows it: the sentences of the command line, and the water within reach day by day. */
export function outlookShown(scenario: Scenario, units: Units): OutlookShown {
  const { runs, firstDay, today, byCase } = outlookByDay(scenario);
  const outlook = outlookOf(runs, scenario, units);
  return {
    units,
    sentences: outlookLines(outlook, shownIn(units)).map(typeset),
    cautions: outlook.cautions.map(typeset),
    names: scenario.cases.map(({ name }) => name),
    firstDay,
    today,
    otherYears: outlook.otherYears.count,
    byCase,
  };
}
