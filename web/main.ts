import { wakeEngine } from "./worker/startWorker.ts";

// The engine takes longer to load than the page: it goes first.
wakeEngine();
void import("./page.tsx");
