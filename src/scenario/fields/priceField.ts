import { tryMoney, type MoneyFor } from "../../quantity/index.ts";
import { fault, text } from "./fields.ts";

/** Money as written: a price for each bushel is read again once the crop is known. */
export function priceAsWritten(per: MoneyFor, means: string) {
  return text(means).superRefine((found, context) => {
    const read = tryMoney(found, per, { kgPerBushel: 25 });
    if ("mend" in read) context.addIssue({ code: "custom", message: fault(read.expected, read.mend) });
  });
}
