export * from "../crop/yieldLines.ts";
