import { svelte } from "@sveltejs/vite-plugin-svelte";
import { defineConfig } from "vitest/config";

const unit = ["tests/**/*.test.ts"];
const browser = ["tests/browser/**/*.test.ts"];

export default defineConfig({
  plugins: [svelte()],
  test: {
    projects: [
      { extends: true, test: { name: "unit", include: unit, exclude: browser, pool: "forks", testTimeout: 60_000, hookTimeout: 60_000 } },
      {
        extends: true,
        test: {
          name: "browser", include: browser, pool: "forks", fileParallelism: false, globalSetup: "tests/browser/setup.ts",
          testTimeout: 180_000, hookTimeout: 180_000,
        },
      },
    ],
  },
});
