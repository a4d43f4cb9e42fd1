import { useSignal, type ReadonlySignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import type { Problem } from "../../../src/problem.ts";
import type { ProfileChoice } from "../../../src/soil/horizons/horizons.ts";
import type { Holdings } from "../../../src/weather/records/holdings.ts";
import type { WeatherUnits } from "../../../src/weather/records/readers/index.ts";

export type FileQuestion = { readonly id: number; readonly text: string; readonly fileName: string } & (
  | {
      readonly kind: "weather";
      readonly station: string | undefined;
      readonly units: WeatherUnits | undefined;
    }
  | { readonly kind: "horizons"; readonly choose: ProfileChoice }
);

export interface FileAnswer {
  readonly id: number;
  readonly problems: readonly Problem[];
  /** Null for horizons, and where the record could not be read. */
  readonly holdings: Holdings | null;
}

type Ask = FileQuestion extends infer Q ? (Q extends FileQuestion ? Omit<Q, "id"> : never) : never;

let worker: Worker | null = null;
let asked = 0;
const waiting = new Map<number, (answer: FileAnswer) => void>();

/** Reads in a worker of its own: a long record takes a while, and the scenario around it may be wrong meanwhile. */
export function readFile(question: Ask): Promise<FileAnswer> {
  if (worker === null) {
    worker = new Worker(new URL("./fileReader.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<FileAnswer>) => {
      waiting.get(data.id)?.(data);
      waiting.delete(data.id);
    });
  }
  asked += 1;
  const id = asked;
  worker.postMessage({ id, ...question });
  return new Promise((resolve) => waiting.set(id, resolve));
}

/** What the reader says of a file; null until it has said it. Asked again whenever the question changes. */
export function useFile(question: Ask | null): ReadonlySignal<FileAnswer | null> {
  const answer = useSignal<FileAnswer | null>(null);
  useEffect(() => {
    let current = true;
    answer.value = null;
    if (question !== null) {
      void readFile(question).then((read) => {
        if (current) answer.value = read;
      });
    }
    return () => {
      current = false;
    };
  }, [
    question === null ? null : JSON.stringify({ ...question, text: question.text.length }),
    question?.text,
  ]);
  return answer;
}
