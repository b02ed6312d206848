import { join } from "node:path";
import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig, type Plugin } from "vite";

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

/** Arrow compiles its test for nulls from text, which our Content-Security-Policy forbids; a set answers the same. */
function arrowWithoutEval(): Plugin {
  const code = "export function createIsValidFunction(nulls) { const set = new Set(nulls ?? []); return (value) => !set.has(value); }";
  return {
    name: "arrow-without-eval",
    load: (id) => (/apache-arrow\/builder\/valid\.mjs$/.test(id.replaceAll("\\", "/")) ? code : null),
  };
}

export default defineConfig({
  root: "src",
  base: "./",
  publicDir: false,
  plugins: [svelte({ configFile: join(import.meta.dirname, "svelte.config.js") }), arrowWithoutEval()],
  worker: {
    format: "es",
    plugins: () => [keepEngineWorker(), arrowWithoutEval()],
    // The server knows by this folder which scripts get the workers' own Content-Security-Policy.
    rolldownOptions: { output: { entryFileNames: "workers/[name]-[hash].js", chunkFileNames: "workers/[name]-[hash].js" } },
  },
  build: { outDir: "../dist/app", emptyOutDir: true, target: "es2022", sourcemap: false, assetsInlineLimit: 0 },
});
