import { signal } from "@preact/signals";

/** A newer page has been fetched and waits until this one lets it in. */
export const newVersion = signal(false);

let waiting: ServiceWorker | null = null;

/** Keeps the page for when there is no network, once it is on show. Needs a secure origin; localhost is one. */
export function startOffline(): void {
  if (!("serviceWorker" in navigator) || !import.meta.env.PROD) return;
  const start = () => void register().catch(() => undefined); // no offline use then; nothing else is lost
  if (document.readyState === "complete") start();
  else addEventListener("load", start);
}

async function register(): Promise<void> {
  const hadOne = navigator.serviceWorker.controller !== null;
  const registration = await navigator.serviceWorker.register(new URL("sw.js", document.baseURI));
  const offer = (worker: ServiceWorker | null) => {
    if (worker === null || !hadOne) return;
    waiting = worker;
    newVersion.value = true;
  };
  offer(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const incoming = registration.installing;
    incoming?.addEventListener("statechange", () => {
      if (incoming.state === "installed") offer(registration.waiting);
    });
  });
}

/** Lets the newer page in and loads it; work is kept as on any reload. */
export function takeNewVersion(): void {
  navigator.serviceWorker.addEventListener("controllerchange", () => location.reload(), { once: true });
  waiting?.postMessage("take over");
}
