export { monthNames, sayMonthDay, tryDate, tryMonthDay } from "./dates.ts";
export { kinds, type QuantityKind, type Units } from "./kinds.ts";
export { isTooLong, longestQuantity, shortenIt } from "./longest.ts";
export { latitudeWithin, mostLatitudeDeg, tryLatitude } from "./latitude.ts";
export { tryRainTotals } from "./rainTotals.ts";
export { moneyWanted, tryMoney, type Money, type MoneyFor } from "./money.ts";
export { loadUnits, readQuantity, tryQuantity, withUnits, type ReadingContext } from "./readQuantity.ts";
export { inUnits, sayBoth, sayNumber, sayQuantity, sayYield, shownAs } from "./sayQuantity.ts";
