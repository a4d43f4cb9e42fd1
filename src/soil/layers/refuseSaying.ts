import { InputError } from "../../problem.ts";

/** As `refuse`, for what was found put in our words: neither quoted nor cut. */
export function refuseSaying(field: string, expected: string, found: string, mend: string): never {
  throw new InputError([{ field, expected, found, mend }]);
}
