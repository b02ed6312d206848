import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

const unit = ["tests/**/*.test.ts"];
const browser = ["tests/browser/**/*.test.ts"];
/** Tests ask the engine many small questions: compiling its code a second time, for speed, costs three times what it saves. */
const quickEngine = ["--no-wasm-tier-up", "--no-wasm-dynamic-tiering"];

export default defineConfig({
  plugins: [svelte()],
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: "unit", include: unit, exclude: browser, pool: "forks", execArgv: quickEngine,
          testTimeout: 60_000, hookTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: "browser", include: browser, pool: "forks", fileParallelism: false, globalSetup: "tests/browser/setup.ts",
          testTimeout: 180_000, hookTimeout: 180_000, expect: { poll: { timeout: 20_000 } },
        },
      },
    ],
  },
});
