import { describe, expect, test } from "vitest";
import { askToKeep } from "../../../src/records/ledger/persist.ts";

const storage = (persisted: boolean, granted: boolean) => {
  const asked: string[] = [];
  return { asked, manager: { persisted: async () => persisted, persist: async () => { asked.push("persist"); return granted; } } as unknown as StorageManager };
};

describe("asking the browser to keep the records", () => {
  test("says they are kept when it grants it", async () => expect(await askToKeep(storage(false, true).manager)).toBe("kept"));
  test("says they are at risk when it refuses", async () => expect(await askToKeep(storage(false, false).manager)).toBe("at risk"));
  test("does not ask again what was granted before", async () => {
    const { asked, manager } = storage(true, false);
    expect(await askToKeep(manager)).toBe("kept");
    expect(asked).toEqual([]);
  });
  test("says unknown where the browser has no such question", async () => {
    expect(await askToKeep({} as StorageManager)).toBe("unknown");
  });
});
