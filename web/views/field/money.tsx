import "../../style/inputs.css";
import "../../style/answer.css";
import "../../style/field-money.css";
import { moneyCaution, shownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { Field, FieldGroup } from "../../forms/field.tsx";
import { ProblemNote } from "../../forms/notes.tsx";
import { fieldState } from "../../forms/place.tsx";
import { Budget } from "../../pictures/field/budget.tsx";
import { MoneyPath } from "../../pictures/field/moneyPath.tsx";
import { PriceByRain } from "../../pictures/field/priceByRain.tsx";
import { edit, valueAt } from "../../state/scenarioStore.ts";
import { units } from "../../state/view.ts";
import { answer, busy, resolved } from "../../worker/client.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { Panel } from "../answer/panel.tsx";
import { pathLead } from "../answer/moneyYears.tsx";
import { WhichDifference } from "../answer/whichDifference.tsx";
import { EntryFirst } from "./entryFirst.tsx";
import { firstPrice } from "./money/edits.ts";
import { Figures } from "./money/figures.tsx";
import { Items } from "./money/items.tsx";
import { Prices } from "./money/prices.tsx";

/** A partial budget of each later case against the first. */
export function Money() {
  if (valueAt("money") === undefined) return <NoMoney />;
  return (
    <>
      <EntryFirst
        shown={
          <>
            <Worth />
            <p class="caution">{moneyCaution}</p>
          </>
        }
        entry={<Entered />}
      />
    </>
  );
}

function Entered() {
  return (
    <>
      <ProblemNote id="field-money-wrong" problems={fieldState("money").problems} />
      <Prices />
      <Items what="costs" />
      <Items what="returns" />
      <FieldGroup title="Or each in one figure">
        <Field path="money.addedCost" label="Costs added each year" hint="12 USD/ac" />
        <Field path="money.reducedCost" label="Costs saved each year" hint="5 USD/ac" />
      </FieldGroup>
      <p class="tools no-print">
        <button
          type="button"
          class="small"
          onClick={() => edit("money", undefined, "chosen", "take out the money")}
        >
          Take the money out
        </button>
      </p>
    </>
  );
}

function NoMoney() {
  const unit = resolved.value?.yieldLine.unit.us ?? "bu/ac";
  return (
    <>
      <p>
        Enter what the crop sells for and what the change costs or saves. You get what is left, and how often
        it pays.
      </p>
      <p class="tools">
        <button
          type="button"
          class="primary"
          onClick={() =>
            edit("money", { price: firstPrice(unit, units.value) }, "chosen", "begin with a price")
          }
        >
          Begin with a price
        </button>
      </p>
      <p class="caution">{moneyCaution}</p>
    </>
  );
}

/** What it comes to: the budget, its figures in words, and the sheet by price and rain. */
function Worth() {
  const now = answer.value;
  const money = now?.comparison.money;
  const unit = resolved.value?.yieldLine.unit;
  if (now === null || money == null || unit === undefined) return null;
  const p = differenceShown.value;
  const pair = money.pairs[p];
  if (pair === undefined)
    return <p class="aside">There is only one case: add another in Inputs to compare.</p>;
  const shown = shownIn(now.units);
  const say = shownMoney(money.currency, unit, shown);
  const { low, high } = money.pricePerKg;
  const { overYears } = pair;
  return (
    <div class={busy.value ? "is-being-redone" : undefined}>
      <WhichDifference />
      <Figures pair={pair} say={say} shown={shown} />
      <div class="panels">
        <Panel
          title="What it takes, what it brings, what is left"
          lead={
            overYears === undefined
              ? `A year, ${say.currency}/${say.land}, at the extra yield of a typical year and your price. The whisker spans 8 years of 10, each with its own weather, yield line and price; “Pays in” counts them all.`
              : `A year, ${say.currency}/${say.land}, each year's own gain spread evenly over ${overYears.path.length} years, at the extra yield of the middle chain and your price. Each chain of years has its own soil and price; the whisker holds eight of ten of them, and “Pays in” counts them all.`
          }
        >
          {(width) => <Budget pair={pair} say={say} runs={now.comparison.method.runs} width={width} />}
        </Panel>
        {overYears !== undefined && (
          <Panel title="Year by year since the change" lead={pathLead(overYears, say)}>
            {(width) => <MoneyPath c={p + 1} faint={busy.value} {...{ pair, overYears, say, width }} />}
          </Panel>
        )}
        <Panel
          title="By price and by rain"
          lead={`${overYears === undefined ? "Left in a typical year" : "Left a year in the middle chain"}, ${say.currency}/${say.land}, and in how many ${overYears === undefined ? "seasons" : "chains of years"} it pays. Hatched: a loss. ${low < high ? "Each column holds one price for all seasons: the ends of your range and your price. So the middle column may differ a little from the figures above, where each season draws its own." : "Without a price range: a fifth less and a fifth more."}`}
        >
          {(width) => <PriceByRain money={money} p={p} say={say} shown={shown} width={width} />}
        </Panel>
      </div>
      <ul class="field-said">
        {(now.field.money[p] ?? []).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}
