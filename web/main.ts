import { startEngineWorker } from "./worker/startWorker.ts";

// The engine takes longer to load than the page: it goes first.
startEngineWorker();
void import("./page.tsx");
