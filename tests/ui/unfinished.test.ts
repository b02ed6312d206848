import { expect, test } from "vitest";
import { during, hold, unfinished } from "../../src/ui/unfinished.ts";

test("what ends by itself is named before what only the owner can end, and nothing once both are done", async () => {
  const release = hold({ until: "the files are left out", ends: "by the owner" });
  let end = (): void => undefined;
  const work = during("the records are written", () => new Promise<void>((done) => (end = done)));
  expect(unfinished()).toEqual({ until: "the records are written", ends: "by itself" });
  end();
  await work;
  expect(unfinished()?.ends).toBe("by the owner");
  release();
  expect(unfinished()).toBeNull();
});

test("work that fails is let go of too", async () => {
  await expect(during("it is written", () => Promise.reject(new Error("full")))).rejects.toThrow("full");
  expect(unfinished()).toBeNull();
});
