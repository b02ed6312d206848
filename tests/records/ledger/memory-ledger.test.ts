import { describe, expect, test } from "vitest";
import { MemoryShelf, openMemoryLedger } from "../../../src/records/ledger/memory-ledger.ts";
import { CONTRACT, newBatch, refused } from "./contract.ts";

describe("a ledger in memory", () => {
  test.each(CONTRACT)("$claim", async ({ check }) => {
    const shelf = new MemoryShelf();
    await expect(check(async () => openMemoryLedger(shelf))).resolves.toBeUndefined();
  });

  test("tells a flipped bit by the import's number", async () => {
    const shelf = new MemoryShelf(), ledger = openMemoryLedger(shelf);
    const batch = await ledger.append(newBatch(1));
    const stored = shelf.kept[0]?.contents.get("tickets") as Uint8Array;
    stored[40] = (stored[40] ?? 0) ^ 1;
    const error = await refused(ledger.payload(batch, "tickets"), "LedgerDamaged");
    expect(error.message).toBe("Import 1 can no longer be read: its tickets have changed on the disk. Import its files again or restore a backup.");
    expect(await ledger.payload(batch, "findings")).toHaveLength(7);
  });

  test("that was closed is told nothing more", async () => {
    const shelf = new MemoryShelf(), told: string[] = [];
    const [one, two, three] = [openMemoryLedger(shelf), openMemoryLedger(shelf), openMemoryLedger(shelf)];
    two.onChange(() => told.push("closed"));
    three.onChange(() => told.push("open"));
    two.close();
    await one.append(newBatch(1));
    expect(told).toEqual(["open"]);
  });
});
