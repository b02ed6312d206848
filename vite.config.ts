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

export default defineConfig({
  root: "src",
  base: "./",
  publicDir: false,
  plugins: [svelte({ configFile: join(import.meta.dirname, "svelte.config.js") })],
  worker: {
    format: "es",
    plugins: () => [keepEngineWorker()],
    // The server knows by this folder which scripts get the workers' own Content-Security-Policy.
    rolldownOptions: { output: { entryFileNames: "workers/[name]-[hash].js", chunkFileNames: "workers/[name]-[hash].js" } },
  },
  build: { outDir: "../dist/app", emptyOutDir: true, target: "es2022", sourcemap: false, assetsInlineLimit: 0 },
});
