/** Of a browser's scheduler, what is used here; not every browser has one. */
interface Scheduling {
  readonly scheduler?: {
    postTask: (task: () => void, options: { readonly priority: "background" }) => Promise<unknown>;
  };
}

/** Lets messages that have come in be heard, without the wait of a timer. */
export function makePause(): () => Promise<void> {
  const { scheduler } = globalThis as Scheduling;
  if (scheduler !== undefined)
    return async () => {
      await scheduler.postTask(() => undefined, { priority: "background" });
    };
  return makeMessagePause();
}

/** The same where there is no scheduler: a message to oneself comes after those that have come in. It takes a detour. */
function makeMessagePause(): () => Promise<void> {
  const { port1, port2 } = new MessageChannel();
  const waiting: (() => void)[] = [];
  port1.addEventListener("message", () => waiting.shift()?.());
  port1.start();
  return () =>
    new Promise((resolve) => {
      waiting.push(resolve);
      port2.postMessage(null);
    });
}
