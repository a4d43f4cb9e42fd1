export * from "../crop/yieldLine.ts";
