import { describe, expect, test, vi } from "vitest";
import { readAhead } from "../../src/records/read-ahead.ts";
import { readFile, type ReadFile, type ReadOptions } from "../../src/records/reading/read-file.ts";

const LAST_DAY = "2026-12-31";
const file = (name: string, text: string) => ({ name, blob: new Blob([text]) });
const TICKETS = file("tickets.csv", "ticket_no,received_on,model\nR-1,2026-01-05,Withy 5\nR-2,soon,Withy 5\n");
const SUPPLIERS = file("suppliers.csv", "supplier\nFLI\n");

function asked(file_no: number, change: Partial<ReadOptions> = {}) {
  const taken: { table: string; rows: number }[] = [];
  const options: ReadOptions = {
    file_no, mapping: null, last_day: LAST_DAY, signal: new AbortController().signal, report: () => undefined,
    take: async ({ table, rows }) => void taken.push({ table, rows }), ...change,
  };
  return { taken, options };
}

describe("files read ahead", () => {
  test("are read once, before anybody asks, and give the same rows and the same account as when asked for", async () => {
    const read = vi.fn<ReadFile>(readFile), ahead = readAhead([TICKETS, SUPPLIERS], LAST_DAY, read);
    await vi.waitFor(() => expect(read).toHaveBeenCalledTimes(2));
    const first = asked(1), plain = asked(1), second = asked(2);
    expect(await ahead(TICKETS, first.options)).toEqual(await readFile(TICKETS, plain.options));
    expect(first.taken).toEqual([{ table: "tickets", rows: 1 }]);
    expect(plain.taken).toEqual(first.taken);
    await ahead(SUPPLIERS, second.options);
    expect(second.taken).toEqual([{ table: "suppliers", rows: 1 }]);
    expect(read).toHaveBeenCalledTimes(2);
  });

  test("are read anew when asked for differently, a second time, or not among them", async () => {
    const read = vi.fn<ReadFile>(readFile), ahead = readAhead([TICKETS], LAST_DAY, read);
    await ahead(TICKETS, asked(2).options);
    await ahead(TICKETS, asked(1, { last_day: "2025-12-31" }).options);
    await ahead(SUPPLIERS, asked(1).options);
    await ahead(TICKETS, asked(1, { mapping: { columns: new Map(), values: new Map(), constants: new Map(), answers: null } }).options);
    expect(read).toHaveBeenCalledTimes(5);
    await ahead(TICKETS, asked(1).options);
    expect(read).toHaveBeenCalledTimes(5);
    await ahead(TICKETS, asked(1).options);
    expect(read).toHaveBeenCalledTimes(6);
  });

  test("that fail say so when they are asked for, not before, and do not stop the next", async () => {
    const read: ReadFile = (one, options) => (one === TICKETS ? Promise.reject(new Error("no disk")) : readFile(one, options));
    const ahead = readAhead([TICKETS, SUPPLIERS], LAST_DAY, read);
    await new Promise((resolve) => setTimeout(resolve, 20));
    await expect(ahead(TICKETS, asked(1).options)).rejects.toThrow("no disk");
    expect((await ahead(SUPPLIERS, asked(2).options))[0]?.rows_read).toBe(1);
  });

  test("are not handed on when the one who asks has given up", async () => {
    const ahead = readAhead([TICKETS], LAST_DAY, readFile), stopped = asked(1, { signal: AbortSignal.abort(new Error("enough")) });
    await expect(ahead(TICKETS, stopped.options)).rejects.toThrow("enough");
    expect(stopped.taken).toEqual([]);
  });
});
