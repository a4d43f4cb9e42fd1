import type { FieldAverage, FieldNumbers } from "../../../../src/answer/comparison/fieldAverage.ts";
import { middleOf } from "../../../../src/answer/runs/middleTotal.ts";
import type { Spread } from "../../../../src/statistics/quantiles.ts";
import type { ShownMoney } from "../../../../src/report/sentences/field/moneyText.ts";
import { rangeSigned } from "../../../../src/report/tables/rangeSaid.ts";
import { fixed, type Formatters } from "../../../../src/report/tables/formatters.ts";

interface StepsProps {
  readonly field: FieldAverage;
  readonly say: ShownMoney;
  readonly shown: Formatters;
}

/** What one row more, and one fewer, does to the whole field. */
export function Steps({ field, say, shown }: StepsProps) {
  const { steps } = middleOf(field.byRainTotal);
  if (steps.length === 0) return null;
  const changes = steps.flatMap((step) => {
    const size = step.rows === null ? `${fixed(step.share * 100, 0)} % of the rows` : "one row";
    return (["oneMore", "oneFewer"] as const).flatMap((key) =>
      step[key] === null
        ? []
        : [{ name: `${size} ${key === "oneMore" ? "more" : "fewer"}: ${step.position}`, numbers: step[key] }],
    );
  });
  const perLand = say.perLand(changes.flatMap(({ numbers }) => Object.values(numbers.worthPerHa ?? {})));
  return (
    <div class="scrolls" tabIndex={0} role="region" aria-label="What one row does">
      <table class="row-steps">
        <caption>What one row does to the whole field: median, with P10 to P90</caption>
        <thead>
          <tr>
            <th scope="col">In place of “{steps[0]!.plain}”</th>
            <th scope="col">Water, {shown.length}</th>
            <th scope="col">Yield, {say.yieldUnit}</th>
            {field.currency !== null && (
              <th scope="col">
                Worth, {say.currency}/{say.land}
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {changes.map(({ name, numbers }) => (
            <tr key={name}>
              <th scope="row">{name}</th>
              {cellsOf(numbers, say, shown, perLand).map((cell, c) => (
                <td key={c}>{cell}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function cellsOf(
  { transpirationMm, yieldKgPerHa, worthPerHa }: FieldNumbers,
  say: ShownMoney,
  shown: Formatters,
  perLand: (perHa: number) => string,
): string[] {
  return [
    changeSaid(transpirationMm, shown.fineWater),
    changeSaid(yieldKgPerHa, say.fineYield),
    ...(worthPerHa === null ? [] : [changeSaid(worthPerHa, perLand)]),
  ];
}

function changeSaid(spread: Spread, say: (value: number) => string): string {
  const middle = say(spread.p50);
  return `${Number(middle) > 0 ? "+" : ""}${middle} (${rangeSigned(spread, say)})`;
}
