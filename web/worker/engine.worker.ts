import { makeEngine } from "./engine.ts";
import { makeHelper } from "./secondWorker.ts";
import type { FromHelper, ToHelper } from "./secondWorkerProtocol.ts";
import { makePause } from "./pause.ts";
import type { FromEngine, ToEngine } from "./protocol.ts";

/** What of a worker's global is used; the page and its worker are checked with the same library of types. */
interface WorkerScope {
  postMessage(message: FromEngine, transfer: ArrayBuffer[]): void;
  addEventListener(type: "message", hear: (event: MessageEvent<ToEngine | Introduction>) => void): void;
}

/** Two workers are made known to each other: one is the engine, the other its helper. */
export type Introduction =
  | { readonly kind: "you are helped"; readonly port: MessagePort }
  | { readonly kind: "you help"; readonly port: MessagePort };

const scope = globalThis as unknown as WorkerScope;
const engine = makeEngine((message, transfer = []) => scope.postMessage(message, transfer), makePause());

scope.addEventListener("message", ({ data }) => {
  switch (data.kind) {
    case "you are helped":
      data.port.addEventListener("message", (event: MessageEvent<FromHelper>) =>
        engine.hearHelper(event.data),
      );
      data.port.start();
      engine.getHelp((message) => data.port.postMessage(message));
      return;
    case "you help": {
      const hear = makeHelper((message, transfer) => data.port.postMessage(message, transfer), makePause());
      data.port.addEventListener("message", (event: MessageEvent<ToHelper>) => hear(event.data));
      data.port.start();
      return;
    }
    default:
      engine.hear(data);
  }
});
