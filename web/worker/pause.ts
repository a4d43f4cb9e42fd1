/** Lets messages that have come in be heard, without the wait of a timer. */
export function makePause(): () => Promise<void> {
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
