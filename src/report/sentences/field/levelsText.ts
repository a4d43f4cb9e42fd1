import type { LevelsAnswer } from "../../../answer/comparison/levelsAnswer.ts";
import type { Counts } from "../../../evidence/counts/counts.ts";
import type { Disagreement, Level } from "../../../evidence/levels.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { capital } from "../sentence.ts";
import { tableLines } from "../../tables/textTable.ts";
import type { MeasuredYield } from "./measuredYield.ts";

/** Levels of yield as a table, then which disagree and what that casts doubt on. 80 columns. */
export function levelsLines(
  answer: LevelsAnswer,
  names: readonly string[],
  said: MeasuredYield,
  unripe: boolean,
): string[] {
  const { levels, year, inYear } = answer;
  const missed =
    year === null || inYear !== null ? "" : `No station record here holds the season of ${year}. `;
  const rows = names.flatMap((name, c) =>
    levels
      .filter(({ caseIndex }) => caseIndex === c)
      .map((level) => [
        `${name}${level.rowPosition === null ? "" : `, ${level.rowPosition}`}`,
        level.by,
        said.size(level.range.middle),
        rangeSaid(level, said) ?? "-",
      ]),
  );
  const told = disagreementsSaid(answer, names, said, unripe);
  return [
    ...wrap(
      inYear === null
        ? `${missed}The model's levels are those of all its seasons.`
        : `The model's levels are those of the season of ${inYear}.`,
    ),
    ...tableLines({ head: [["Yield", "by", said.unit, "range"]], rows }),
    "",
    ...bullets(
      told.length > 0 ? told : ["No two of them are further apart than their ranges: the levels agree."],
    ),
  ];
}

/** A sentence or two for each two levels that cannot both be right. */
export function disagreementsSaid(
  { disagreements, inYear }: Pick<LevelsAnswer, "disagreements" | "inYear">,
  names: readonly string[],
  said: MeasuredYield,
  unripe: boolean,
): string[] {
  return disagreements.map(({ higher, lower }) => {
    const where = [higher, lower].map(({ rowPosition }) => rowPosition).find((one) => one !== null);
    const of = `"${names[higher.caseIndex]}"${where === undefined ? "" : ` (${where})`}`;
    const loose = [higher, lower].some(({ range }) => range.low === null)
      ? " One of them has no range, so take this loosely."
      : "";
    return `The levels of ${of} disagree by more than their ranges: ${levelSaid(higher, said)}, ${levelSaid(lower, said)}.${loose} ${capital(doubtSaid({ higher, lower }, inYear, unripe))}`;
  });
}

/** Of grain that was not ripe the weight is still open. */
export function countsUnripe(counts: Counts | null): boolean {
  return counts !== null && counts.groups.some(({ stage }) => stage !== "ripe");
}

function levelSaid(level: Level, said: MeasuredYield): string {
  const range = rangeSaid(level, said);
  const by = level.by === "model" ? "the model" : level.by;
  return `${by} ${said.say(level.range.middle)}${range === null ? "" : ` (${range})`}`;
}

function rangeSaid({ range: { low, high } }: Level, said: MeasuredYield): string | null {
  return low === null || high === null ? null : `${said.size(low)} to ${said.size(high)}`;
}

function doubtSaid({ higher, lower }: Disagreement, inYear: number | null, unripe: boolean): string {
  const early = unripe ? "the count before the grain was ripe, which can read high" : "";
  const listed = (...causes: readonly string[]) => {
    const all = causes.filter((cause) => cause !== "");
    return all.length < 2 ? all.join("") : `${all.slice(0, -1).join(", ")} and ${all.at(-1)}`;
  };
  if (lower.by === "model") {
    const rain = inYear === null ? "the rain of that year" : "";
    return `that casts doubt on ${listed("the model's water at the start", rain, "its yield line", higher.by === "counts" ? early : "")}: its differences are worth no more than its levels.`;
  }
  if (higher.by === "model") {
    const rain = inYear === null ? "the rain of that year" : "";
    return `that casts doubt on ${listed("the model's water at the start", rain, "its yield line")}, or something else was short there: stand, nutrients, lodging, pests and disease.`;
  }
  return higher.by === "counts"
    ? `that casts doubt on ${listed(early, "where the spots lay", "row width and what a kernel weighs", "grain lost at harvest")}.`
    : "that casts doubt on the row width, what a kernel weighs and where the spots lay, or on the width of the strips and the moisture of their yields.";
}
