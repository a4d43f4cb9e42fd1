import { defineConfig } from "vite";
import packageFile from "./package.json" with { type: "json" };

// A module stays a module, so that a bundler takes only what is used; what is installed beside it stays outside.
export default defineConfig({
  publicDir: false,
  build: {
    lib: { entry: "src/index.ts", formats: ["es"] },
    target: "es2022",
    minify: false,
    outDir: "dist/library",
    emptyOutDir: true,
    rolldownOptions: {
      external: Object.keys(packageFile.dependencies).map((name) => new RegExp(`^${name}(?:/|$)`)),
      output: { preserveModules: true, preserveModulesRoot: "src", entryFileNames: "[name].mjs" },
    },
  },
});
