import { defineConfig } from "vite";

// One file for Node: starts in a fraction of the time the loose modules need.
export default defineConfig({
  publicDir: false,
  ssr: { noExternal: true, target: "node" },
  build: {
    ssr: "src/cli/main.ts",
    target: "node20",
    minify: false,
    outDir: "dist",
    emptyOutDir: true,
    rolldownOptions: { output: { entryFileNames: "rootfront.mjs", chunkFileNames: "[name]-[hash].mjs" } },
  },
});
