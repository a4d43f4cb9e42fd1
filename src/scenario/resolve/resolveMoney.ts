import type { MoneyItem, MoneyPlan } from "../moneyPlan.ts";
import type { YieldUnit } from "../../crop/yield/yieldLine.ts";
import { haPerAcre, kgPerPound } from "../../quantity/constants.ts";
import { sayNumber, tryMoney, type Money, type MoneyFor } from "../../quantity/index.ts";
import { itemDefaults, type MoneyPart } from "../fields/moneyFields.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";

type ItemPart = NonNullable<MoneyPart["costs"]>[number];

/**
 * The money of a scenario; undefined where it has faults, with the problems written down.
 *
 * @param unit how the crop is counted; null where the crop is not known
 * @param rowsInAll rows of the implement as the row positions tell them; null where they do not
 */
export function resolveMoney(
  money: MoneyPart,
  unit: YieldUnit | null,
  rowsInAll: number | null,
  notebook: Notebook,
): MoneyPlan | undefined {
  const before = notebook.problems.length;
  const middle = readPrice(money.price, "money.price", unit, notebook);
  if (middle === undefined) return undefined;
  const { currency } = middle;
  const range = (money.priceRange ?? []).map((written, p) => {
    const read = readPrice(written, `money.priceRange[${p}]`, unit, notebook);
    if (read !== undefined) sameCurrency(read, currency, `money.priceRange[${p}]`, written, notebook);
    return read?.amount;
  });
  const [low = middle.amount, high = middle.amount] = range;
  refuseRange(money, { low, middle: middle.amount, high }, notebook);
  const areaHa = money.area ?? null;
  const reader: Reader = { currency, areaHa, rows: money.implementRows ?? rowsInAll, notebook };
  const items = [
    ...shortItems(money, reader),
    ...(money.costs ?? []).map((one, i) => readItem(one, "Costs", `money.costs[${i}]`, reader)),
    ...(money.returns ?? []).map((one, i) => readItem(one, "Returns", `money.returns[${i}]`, reader)),
  ];
  if (notebook.problems.length > before) return undefined;
  return {
    currency,
    pricePerKg: { low, middle: middle.amount, high },
    areaHa,
    items: items.filter((one) => one !== undefined),
  };
}

interface Reader {
  readonly currency: string;
  readonly areaHa: number | null;
  readonly rows: number | null;
  readonly notebook: Notebook;
}

function readPrice(
  written: string,
  field: string,
  unit: YieldUnit | null,
  notebook: Notebook,
): Money | undefined {
  const price = tryMoney(written, "mass", { kgPerBushel: unit?.us === "bu/ac" ? unit.kgPerUsUnit : null });
  if ("mend" in price) {
    // Read with some bushel before: what is wrong is that this crop has none.
    if (unit !== null)
      complain(
        notebook,
        field,
        'a price such as "0.25 USD/lb"',
        `"${written}"`,
        "this crop is not counted in bushels: give the price for a lb or kg",
      );
    return undefined;
  }
  if (!(price.amount > 0)) {
    complain(notebook, field, "a price above 0", `"${written}"`, "check the number");
    return undefined;
  }
  refuseOddPrice(price, written, field, unit, notebook);
  return price;
}

/** Prices of what is sown and sold are told by the dollar or near it in these; of other currencies nothing is known here. */
const dollarLike: readonly string[] = ["USD", "CAD", "AUD", "NZD", "EUR", "GBP"];
/** For each kg. Ours: 0.02 is 50 cents for a bushel of corn and 18 dollars for a ton of hay; 3 is 76 dollars for that bushel. */
const oddPricePerKg = { below: 0.02, above: 3 };

/** 4.20 USD/ton where 4.20 USD/bu was meant would make any change worthless without a word. */
function refuseOddPrice(
  { amount, currency }: Money,
  written: string,
  field: string,
  unit: YieldUnit | null,
  notebook: Notebook,
): void {
  const { below, above } = oddPricePerKg;
  if (!dollarLike.includes(currency) || (amount >= below && amount <= above)) return;
  const [each, kg] = unit?.us === "bu/ac" ? ["bu", unit.kgPerUsUnit] : ["lb", kgPerPound];
  const say = (perKg: number) => sayNumber(perKg * kg, 2, 2);
  complain(
    notebook,
    field,
    `a price from ${say(below)} to ${say(above)} ${currency}/${each}`,
    `"${written}", which is ${say(amount)} ${currency}/${each}`,
    "check the number, and whether it is for a bu, lb, kg or ton",
  );
}

function refuseRange(
  { priceRange, price }: MoneyPart,
  { low, middle, high }: MoneyPlan["pricePerKg"],
  notebook: Notebook,
): void {
  if (priceRange === undefined || (low <= middle && middle <= high)) return;
  const found = `"${priceRange[0]}" to "${priceRange[1]}"`;
  if (low > high)
    complain(notebook, "money.priceRange", "the lower price first", found, "turn the two round");
  else
    complain(
      notebook,
      "money.priceRange",
      `prices on both sides of money.price, "${price}"`,
      found,
      "widen the range, or change the price",
    );
}

function sameCurrency(
  { currency }: Money,
  wanted: string,
  field: string,
  written: string,
  notebook: Notebook,
): void {
  if (currency === wanted) return;
  complain(notebook, field, `an amount in ${wanted}, as the price is`, `"${written}"`, "use one currency");
}

/** `addedCost` and `reducedCost`: the short way for one amount each. */
function shortItems(money: MoneyPart, { currency, notebook }: Reader): MoneyItem[] {
  return (["addedCost", "reducedCost"] as const).flatMap((key): MoneyItem[] => {
    const written = money[key];
    if (written === undefined) return [];
    const field = `money.${key}`;
    const cost = tryMoney(written, "land");
    if ("mend" in cost) return [];
    sameCurrency(cost, currency, field, written, notebook);
    if (cost.amount < 0)
      complain(
        notebook,
        field,
        "an amount not below 0",
        `"${written}"`,
        `leave out the minus, or give it as ${key === "addedCost" ? "reducedCost" : "addedCost"}`,
      );
    const [name, part] =
      key === "addedCost"
        ? (["added cost", "addedCosts"] as const)
        : (["reduced cost", "reducedCosts"] as const);
    return [{ name, part, amount: cost.amount, per: "hectare", once: null }];
  });
}

function readItem(
  { name, amount: written, per, years, interest, kind = itemDefaults.kind.byDefault.value }: ItemPart,
  what: "Costs" | "Returns",
  field: string,
  { currency, areaHa, rows, notebook }: Reader,
): MoneyItem | undefined {
  const tell = (of: MoneyFor) => tryMoney(written, of);
  const land = tell("land");
  const read = "currency" in land ? land : tell("whole");
  if ("mend" in read) return undefined;
  sameCurrency(read, currency, `${field}.amount`, written, notebook);
  const once =
    years === undefined
      ? null
      : {
          years,
          interest: orDefault(notebook, interest, itemDefaults.interest.byDefault, `${field}.interest`),
        };
  const item = { name, part: `${kind}${what}` as const, once };
  if ("currency" in land) return { ...item, amount: land.amount, per: "hectare" };
  if (per === "acre") return { ...item, amount: read.amount / haPerAcre, per: "hectare" };
  if (per === "hectare") return { ...item, amount: read.amount, per: "hectare" };
  if (per === "row" && rows === null)
    complain(
      notebook,
      "money.implementRows",
      `the rows of the implement, as "${name}" is a cost per row`,
      undefined,
      "give them here, or rows in rowPositions",
    );
  if (areaHa === null)
    complain(
      notebook,
      "money.area",
      `the land that "${name}" is spread over, such as "160 ac"`,
      undefined,
      "give the area, or write the amount per ac or ha",
    );
  return { ...item, amount: read.amount * (per === "row" ? (rows ?? 1) : 1), per: "field" };
}
