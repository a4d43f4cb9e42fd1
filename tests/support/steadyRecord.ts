/** A record of two years with the same reference ET every day and no rain, for a fallow of so many days before it is sown. */
export function steadyRecord(
  days: number,
  et0MmPerDay: number,
): { readonly text: string; readonly sowing: string } {
  const begins = Date.UTC(2001, 0, 1);
  const dayText = (day: number): string => new Date(begins + day * 86_400_000).toISOString().slice(0, 10);
  const sownOnDay = 120; // May 1
  if (days > sownOnDay) throw new Error(`at most ${sownOnDay} days before May 1`);
  const lines = Array.from({ length: 730 }, (_, day) => `${dayText(day)},0,${et0MmPerDay}`);
  return { text: ["date,rain_mm,et0_mm", ...lines, ""].join("\n"), sowing: "May 1" };
}
