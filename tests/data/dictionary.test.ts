import { mkdtemp, readdir, readFile, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { TABLES } from "../../src/records/columns.ts";
import { main } from "../../src/report/main.ts";
import { demandShopsTable, demandTable } from "../../src/report/shops/demand-tables.ts";
import { shopsTable } from "../../src/report/shops/shops-table.ts";
import { allowedWords, tablesOf, typeWords } from "./dictionary.ts";

describe("the data dictionary", () => {
  const written = tablesOf("README.md");

  test.each(TABLES)("has every column of $name with its type, unit, allowed values, whether it is required, and what it means", ({ name, columns }) => {
    expect(written.get(name)).toEqual(columns.map((column) => [column.name, typeWords(column), column.unit ?? "", allowedWords(column), column.required ? "yes" : "", column.meaning]));
  });

  test("names the vocabulary's files that are there", async () => {
    const text = await readFile("data/README.md", "utf8"), files = (await readdir("data/vocabulary")).filter((name) => name.endsWith(".csv"));
    expect(files.filter((name) => !text.includes(name))).toEqual([]);
  });
});

describe("the dictionary of the report", () => {
  const written = tablesOf("REPORT.md");

  test("has every table the report writes with its columns in their order, each with unit and meaning, and no other", async () => {
    const folder = await mkdtemp(join(tmpdir(), "dictionary-")), out = join(folder, "out");
    try {
      await writeFile(join(folder, "tickets.csv"), "ticket_no,received_on,model,reel_kind,job\nT1,2024-03-01,Whinbeck 40,spinning,full service\n");
      expect(await main([folder, "--out", out])).toBe(0);
      const files = (await readdir(out)).filter((name) => name.endsWith(".csv")), heads = await Promise.all(files.map(async (name) => [name, (await readFile(join(out, name), "utf8")).split(/\r?\n/)[0]?.split(",")] as const));
      // These stand only beside the reports of many shops.
      const all = new Map([...heads, ...[shopsTable([]), demandTable([]), demandShopsTable([])].map(({ file, columns }) => [file, columns] as const)]);
      expect([...written.keys()].sort()).toEqual([...all.keys()].sort());
      for (const [name, columns] of all) expect([name, written.get(name)?.map(([column]) => column)]).toEqual([name, columns]);
    } finally {
      await rm(folder, { recursive: true });
    }
  });

  test("leaves no unit and no meaning blank", () => {
    const blank = [...written].flatMap(([name, rows]) => rows.filter((cells) => cells.length !== 3 || cells.some((cell) => cell === "")).map((cells) => `${name}: ${cells.join(" | ")}`));
    expect(blank).toEqual([]);
  });
});
