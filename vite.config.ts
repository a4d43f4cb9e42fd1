import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { defineConfig, type Plugin } from "vite";

/** The page: static files in dist-page/, to be served from any folder. */
export default defineConfig({
  root: "web",
  base: "./",
  publicDir: false,
  plugins: [pageAtOnce(), offlineFiles()],
  worker: { format: "es" },
  build: {
    outDir: "../dist-page",
    emptyOutDir: true,
    target: "es2022",
    // A small file inlined as data: could not be fetched under the page's policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // The charts' code is one file of 1.2 MB, loaded when the first chart is.
    chunkSizeWarningLimit: 1500,
  },
});

/** The page by its folder: some hosts send `index.html` there, and a sent-on answer cannot be kept for a page. */
const addressOf = (name: string): string => (name === "index.html" ? "./" : `./${name}`);

/** The engine is begun before the page's own code (see main.ts), which is fetched beside it all the same. */
function pageAtOnce(): Plugin {
  return {
    name: "page-at-once",
    apply: "build",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle = {} }) {
        const page = Object.values(bundle).find((one) => one.type === "chunk" && one.name === "page");
        if (page?.type !== "chunk") throw new Error("the page's code is not where it was");
        const styles = [...(page.viteMetadata?.importedCss ?? [])];
        return [
          ...styles.map((href) => link({ rel: "stylesheet", crossorigin: true, href: `./${href}` })),
          ...[page.fileName, ...page.imports]
            .filter((name) => !html.includes(name))
            .map((href) => link({ rel: "modulepreload", crossorigin: true, href: `./${href}` })),
        ];
      },
    },
  };
}

function link(attrs: Record<string, string | boolean>) {
  return { tag: "link", attrs, injectTo: "head" as const };
}

/** Writes the service worker with the list of all files of this very build, and a mark that changes with any of them. */
function offlineFiles(): Plugin {
  return {
    name: "offline-files",
    apply: "build",
    enforce: "post",
    generateBundle: {
      order: "post",
      handler(_options, bundle) {
        const mark = createHash("sha256");
        const files = Object.keys(bundle).toSorted();
        for (const name of files) {
          const one = bundle[name];
          mark.update(name).update(one?.type === "asset" ? one.source : (one?.code ?? ""));
        }
        const template = readFileSync(new URL("./web/offline/sw.js", import.meta.url), "utf8");
        const source = template
          .replace("__FILES__", JSON.stringify(files.map(addressOf), null, 2))
          .replace("__MARK__", JSON.stringify(mark.update(template).digest("hex").slice(0, 16)));
        this.emitFile({ type: "asset", fileName: "sw.js", source });
      },
    },
  };
}
