import { InputError, quoteFound, type Problem } from "../../../problem.ts";
import { counted } from "./complaints.ts";

/** Stations of a file, by identifier. */
export type Stations = Map<string, { readonly name: string; lines: number }>;

const listed = 12;

/** Whether a station is the one asked for, by identifier or name, whatever the case. */
export function isWanted(wanted: string, id: string, name: string): boolean {
  const plain = wanted.trim().toLowerCase();
  return id.toLowerCase() === plain || name.toLowerCase() === plain;
}

/** What has to be chosen, or chosen better; null where the station is plain. */
export function stationProblem(
  stations: Stations,
  wanted: string | undefined,
  fileName: string,
): Problem | null {
  const mend = "set weather.station in the scenario, or --weather-station, to one of them";
  if (wanted === undefined) {
    if (stations.size <= 1) return null;
    return { field: fileName, expected: "one station", found: `${stations.size}: ${list(stations)}`, mend };
  }
  if ([...stations].some(([id, { name }]) => isWanted(wanted, id, name))) return null;
  const expected =
    stations.size === 0 ? `a station of ${fileName}` : `a station of ${fileName}: ${list(stations)}`;
  return { field: "weather.station", expected, found: quoteFound(wanted), mend };
}

/** The one station there is, or the one asked for; otherwise refuses with the list to choose from. */
export function chooseStation(
  stations: Stations,
  wanted: string | undefined,
  fileName: string,
): readonly [id: string, name: string] | null {
  const problem = stationProblem(stations, wanted, fileName);
  if (problem !== null) throw new InputError([problem]);
  for (const [id, { name }] of stations) {
    if (wanted === undefined || isWanted(wanted, id, name)) return [id, name];
  }
  return null;
}

function list(stations: Stations): string {
  const said = [...stations].slice(0, listed).map(([id, { name, lines }]) => {
    return `${id} (${name === "" || name === id ? "" : `${name}, `}${counted(lines, "line")})`;
  });
  const more = stations.size - said.length;
  return said.join("; ") + (more > 0 ? `; and ${more} more` : "");
}
