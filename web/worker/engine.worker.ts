import { makeEngine } from "./engine.ts";
import { makeSecondWorker } from "./secondWorker.ts";
import type { FromSecondWorker, ToSecondWorker } from "./secondWorkerProtocol.ts";
import { makePause } from "./pause.ts";
import type { FromEngine, ToEngine } from "./protocol.ts";

/** What of a worker's global is used; the page and its worker are checked with the same library of types. */
interface WorkerScope {
  postMessage(message: FromEngine, transfer: ArrayBuffer[]): void;
  addEventListener(type: "message", onMessage: (event: MessageEvent<ToEngine | Introduction>) => void): void;
}

/** Two workers are made known to each other: the first is the engine, the second takes runs off it. */
export type Introduction =
  | { readonly kind: "first worker"; readonly port: MessagePort }
  | { readonly kind: "second worker"; readonly port: MessagePort };

const scope = globalThis as unknown as WorkerScope;
const engine = makeEngine((message, transfer = []) => scope.postMessage(message, transfer), makePause());

scope.addEventListener("message", ({ data }) => {
  switch (data.kind) {
    case "first worker":
      data.port.addEventListener("message", (event: MessageEvent<FromSecondWorker>) =>
        engine.onSecondWorker(event.data),
      );
      data.port.start();
      engine.getHelp((message) => data.port.postMessage(message));
      return;
    case "second worker": {
      const onMessage = makeSecondWorker(
        (message, transfer) => data.port.postMessage(message, transfer),
        makePause(),
      );
      data.port.addEventListener("message", (event: MessageEvent<ToSecondWorker>) => onMessage(event.data));
      data.port.start();
      return;
    }
    default:
      engine.onMessage(data);
  }
});
