import { kinds, type Units } from "../../../src/quantity/kinds.ts";
import { monthsDown, tableOfLists, type Table } from "../../forms/edits/cells.ts";

export const monthsPath = "weather.monthlyNormals";

/** Normals, a row a month. A list never has fewer than twelve; one emptied to the last is left out. */
export function monthsTable(units: Units): Table {
  const columns = [
    { key: "rain", word: "Rain", unit: kinds.rain[units].unit },
    { key: "wetDays", word: "Wet days", unit: "days" },
    { key: "tMax", word: "Mean high", unit: kinds.temperature[units].unit },
    { key: "tMin", word: "Mean low", unit: kinds.temperature[units].unit },
  ];
  return {
    ...tableOfLists(
      columns.map(({ key }) => `${monthsPath}.${key}`),
      columns,
      (list) => {
        const twelve = Array.from({ length: 12 }, (_, month) => list[month] ?? "");
        return twelve.every((one) => one === "") ? undefined : twelve;
      },
    ),
    turned: monthsDown,
  };
}
