/**
 * Fetches a file that the scenario names; throws an InputError where it cannot.
 *
 * @param path relative to the scenario file
 * @param field of the scenario that names it, for the error
 */
export type ReadText = (path: string, field: string) => string;
