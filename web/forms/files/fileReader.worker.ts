import { InputError } from "../../../src/problem.ts";
import { readHorizons } from "../../../src/soil/horizons/horizons.ts";
import { describeHoldings } from "../../../src/weather/records/holdings.ts";
import { readWeather } from "../../../src/weather/records/readers/index.ts";
import type { FileAnswer, FileQuestion } from "./fileReader.ts";

/** Reads a file apart from any scenario: what a station record holds, or what a file of horizons wants to be asked. */

self.addEventListener("message", ({ data }: MessageEvent<FileQuestion>) => {
  self.postMessage({ id: data.id, ...answer(data) } satisfies FileAnswer);
});

function answer(question: FileQuestion): Pick<FileAnswer, "problems" | "holdings"> {
  const { text, fileName } = question;
  try {
    if (question.kind === "weather") {
      const { station, units } = question;
      return { problems: [], holdings: describeHoldings(readWeather(text, { fileName, station, units })) };
    }
    readHorizons(text, fileName, question.choose);
    return { problems: [], holdings: null };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { problems: error.problems, holdings: null };
  }
}
