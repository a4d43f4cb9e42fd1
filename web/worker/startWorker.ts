let worker: Worker | null = null;
let failure: string | null = null;
let onFailure: (said: string) => void = () => undefined;

/** The engine's worker, begun when it is first asked for, so that it is ready when the scenario is. */
export function startEngineWorker(): Worker {
  if (worker !== null) return worker;
  worker = newWorker();
  worker.addEventListener("error", ({ message }) => {
    failure = message || "the engine could not be loaded";
    onFailure(failure);
  });
  return worker;
}

/** Hears of a fault of the engine, of one before as well. */
export function whenEngineFails(onMessage: (said: string) => void): void {
  onFailure = onMessage;
  if (failure !== null) onMessage(failure);
}

export function newWorker(): Worker {
  return new Worker(new URL("./engine.worker.ts", import.meta.url), { type: "module" });
}
