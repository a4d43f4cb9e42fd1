import * as z from "zod";
import { nearestName } from "../../nearestName.ts";
import { encodeFault } from "../read/problems.ts";
import { cropFields } from "./cropFields.ts";
import { fault, group, text, wholeNumber } from "./fields.ts";
import { readyRotations, type ReadyRotation } from "./facts/rotations.ts";
import { withDefault } from "./facts/withDefault.ts";

/** Crops year after year in a scenario file. */

export { readyRotations, type ReadyRotation };

/** A year without harvest. */
export const fallowYear = "fallow";

const mostYears = 6;

const listed = z
  .array(
    z.union([text("A crop that we have numbers of, or fallow", 60), cropFields], {
      error: (issue) => insideOf(issue.code === "invalid_union" ? issue.errors : [], issue.input),
    }),
    { error: () => fault("a list of 1 to 6 in brackets", "write it between [ and ]") },
  )
  .min(1, { error: () => fault(`a list of 1 to ${mostYears} years`, "name the crops in their order") })
  .max(mostYears, {
    error: () => fault(`a list of 1 to ${mostYears} years`, "a rotation of ours has at most six"),
  })
  .describe("One a year, by year of harvest");

/** Words are meant as a crop's name, a group as a crop by its numbers: what that one found wrong. */
function insideOf(errors: readonly (readonly z.core.$ZodIssue[])[], input: unknown): string {
  if (typeof input !== "string" && (typeof input !== "object" || input === null))
    return fault(
      'a crop such as "winter wheat", { "name": "corn", "sowing": "May 10" } or "fallow"',
      "name one",
    );
  const [asText = [], asCrop = []] = errors;
  const issues = (typeof input === "string" ? asText : asCrop).map((one) => ({
    path: one.path,
    message: one.message,
    ...(one.code === "unrecognized_keys" ? { keys: one.keys } : {}),
  }));
  return encodeFault({ kind: "inside", issues });
}

/** A list is the other way, and is told of too. */
const byName = z
  .enum(readyRotations, {
    error: ({ input }) => {
      const near = typeof input === "string" ? nearestName(input, readyRotations) : null;
      return fault(
        `${readyRotations.map((name) => `"${name}"`).join(", ")}, or a list with a crop or "${fallowYear}" for each year`,
        near === null ? "choose one of these, or list the years" : `did you mean "${near}"?`,
      );
    },
  })
  .describe("A rotation by its name");

export const rotationFields = z
  .union([byName, listed], {
    error: (issue) => {
      const [asName = [], asList = []] = issue.code === "invalid_union" ? issue.errors : [];
      const issues = (Array.isArray(issue.input) ? asList : asName).map(({ path, message }) => ({
        path,
        message,
      }));
      return encodeFault({ kind: "inside", issues });
    },
  })
  .describe(
    'Crops year after year on this field, with what the rain leaves from one to the next: a rotation by its name, or a list with one entry a year, by year of harvest: a crop ("winter wheat", { "name": "corn", "sowing": "May 10" }) or "fallow" for a year without harvest. "every year" is the scenario\'s own crop each year. A crop that is ripe only in the year after its sowing is sown the autumn before its year. The crop of `crop` is the one the question is about and has to be among them. Where no starting water is stated, what the years before left is taken. Left out: seasons by themselves',
  );

export const chainFields = group(
  {
    warmUp: withDefault(
      wholeNumber(
        "Years run under the first case's roots before the cases differ, where no starting water is stated",
        0,
        50,
      ),
      6,
      "by then the crop's water hardly knows the start any more: see tests/properties/chain.test.ts; ours",
    ),
    length: withDefault(
      wholeNumber("Years shown of the path from the first year to those after it", 1, 40),
      8,
      "our choice",
    ),
  },
  "How years in a row are run",
);

export type RotationPart = z.output<typeof rotationFields>;
