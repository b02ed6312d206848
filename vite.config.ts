import { join } from "node:path";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";
import { engineCode } from "./src/db/engine-code.ts";

const PACKAGED_ENGINE = "@duckdb/duckdb-wasm/dist/duckdb-eh.wasm";

/** The engine's code goes into the build as we run it, not as it is packaged. */
function ownEngineCode(): Plugin {
  return {
    name: "own-engine-code",
    enforce: "pre",
    resolveId: (id) => (id === `${PACKAGED_ENGINE}?url` ? `${engineCode()}?url` : null),
  };
}

/** The engine's worker is imported only for what it does; its package claims to have no side effects. */
function keepEngineWorker(): Plugin {
  return {
    name: "keep-engine-worker",
    enforce: "pre",
    async resolveId(id, importer, options) {
      if (!id.endsWith("duckdb-browser-eh.worker.js")) return null;
      const resolved = await this.resolve(id, importer, { ...options, skipSelf: true });
      return resolved && { ...resolved, moduleSideEffects: true };
    },
  };
}

/** Modules that turn text into code, which our Content-Security-Policy forbids, and what answers the same without. */
const WITHOUT_EVAL: Readonly<Record<string, string>> = {
  "apache-arrow/builder/valid.mjs":
    "export function createIsValidFunction(nulls) { const set = new Set(nulls ?? []); return (value) => !set.has(value); }",
  "@stdlib/assert-has-generator-support/lib/main.js": "module.exports = () => true;",
};

function withoutEval(): Plugin {
  return {
    name: "without-eval",
    load: (id) => Object.entries(WITHOUT_EVAL).find(([path]) => id.replaceAll("\\", "/").endsWith(`/${path}`))?.[1] ?? null,
  };
}

export default defineConfig({
  root: "src",
  base: "./",
  publicDir: false,
  plugins: [svelte({ configFile: join(import.meta.dirname, "svelte.config.js") }), ownEngineCode(), withoutEval()],
  worker: {
    format: "es",
    plugins: () => [keepEngineWorker(), ownEngineCode(), withoutEval()],
    // The server knows by this folder which scripts get the workers' own Content-Security-Policy.
    rolldownOptions: {
      output: { entryFileNames: "workers/[name]-[hash].js", chunkFileNames: "workers/[name]-[hash].js" },
      // The engine's glue has `eval` in parts that never run here; the workers' policy would stop them.
      checks: { eval: false, pluginTimings: false },
    },
  },
  build: { outDir: "../dist/app", emptyOutDir: true, target: "es2022", sourcemap: false, assetsInlineLimit: 0, rolldownOptions: { checks: { pluginTimings: false } } },
});
