import type { MoneyOverYears } from "../../../src/answer/money/moneyOverYears.ts";
import { payBackYearsSaid } from "../../../src/report/sentences/field/moneyPathText.ts";
import { shownMoney, type ShownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import { MoneyPath } from "../../pictures/field/moneyPath.tsx";
import { answer, busy, resolved } from "../../worker/client.ts";
import { Panel } from "./panel.tsx";

/** What the path is of. */
export function pathLead(
  { paidAtStartPerHa, yearlyCostPerHa, interest }: MoneyOverYears,
  say: ShownMoney,
): string {
  const perLand = say.perLand([paidAtStartPerHa, yearlyCostPerHa]);
  const unit = `${say.currency}/${say.land}`;
  const start = paidAtStartPerHa > 0 ? `${perLand(paidAtStartPerHa)} ${unit} paid at the start, then ` : "";
  const costs =
    yearlyCostPerHa === 0
      ? "each year's own gain"
      : `each year's own gain less ${typeset(perLand(yearlyCostPerHa))} ${unit} of yearly cost`;
  const said = `${start}${costs}${interest > 0 ? ", with interest" : ""}: what is left up to each year, worth on the day of the change.`;
  return said[0]!.toUpperCase() + said.slice(1);
}

/** The money of years in a row, beside their water: until when what was paid is earned back. Nothing without a price. */
export function MoneyYears({ d, shown }: { readonly d: number; readonly shown: Formatters }) {
  const money = answer.value?.comparison.money;
  const pair = money?.pairs[d];
  const unit = resolved.value?.yieldLine.unit;
  if (money == null || pair?.overYears === undefined || unit === undefined) return null;
  const { overYears } = pair;
  const say = shownMoney(money.currency, unit, shown);
  return (
    <Panel title="What is left, year by year" lead={pathLead(overYears, say)}>
      {(width) => (
        <>
          <MoneyPath c={d + 1} faint={busy.value} {...{ pair, overYears, say, width }} />
          {payBackYearsSaid(pair, say).map((sentence) => (
            <p key={sentence}>{typeset(sentence)}</p>
          ))}
        </>
      )}
    </Panel>
  );
}
