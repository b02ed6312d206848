import { expect, test } from "vitest";
import { Changing } from "../../src/ui/changing.svelte.ts";
import { writingWays } from "../../src/rooms/settings/writing-ways.ts";
import { levelOf } from "../../src/rooms/settings/level-of.ts";

test("every way of writing shows how it writes, the browser's own first and a chosen one always among them", () => {
  const ways = writingWays("en-IE");
  expect(ways[0]?.value).toBe("");
  expect(ways[0]?.label).toMatch(/^As this browser: .*2026, 1,234\.50$/);
  expect(ways.find(({ value }) => value === "de-DE")?.label).toBe("German (Germany): 14. März 2026, 1.234,50");
  expect(ways.some(({ value }) => value === "en-IE")).toBe(true);
  expect(new Set(ways.map(({ value }) => value)).size).toBe(ways.length);
});

test("a level is read in per cent, and what is none is said", () => {
  expect([levelOf("95"), levelOf("99,9"), levelOf(" 50 %")]).toEqual([0.95, 0.999, 0.5]);
  for (const wrong of ["", "100", "40", "a lot", "95.55", "-1"]) expect(() => levelOf(wrong), wrong).toThrow("is no level. Write 50 to 99.9");
});

test("a change can be taken back once, and one that fails says why and offers no way back", async () => {
  const changing = new Changing();
  let set = "old";
  await changing.make("Changed.", async () => void (set = "new"), async () => void (set = "old"));
  expect([set, changing.did?.words]).toEqual(["new", "Changed."]);
  await changing.undo();
  await changing.undo();
  expect([set, changing.did, changing.trouble]).toEqual(["old", null, null]);
  await changing.make("Changed.", async () => void levelOf("much"), async () => undefined);
  expect([changing.did, changing.trouble]).toEqual([null, "“much” is no level. Write 50 to 99.9, such as 95."]);
});
