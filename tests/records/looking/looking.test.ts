import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import type { Engine } from "../../../src/db/engine.ts";
import { openNodeEngine } from "../../../src/db/open-node.ts";
import { prepareSchema } from "../../../src/db/prepare.ts";
import { importFiles } from "../../../src/records/importing.ts";
import type { Ledger } from "../../../src/records/ledger/ledger.ts";
import { openMemoryLedger } from "../../../src/records/ledger/memory-ledger.ts";
import { loadVocabulary } from "../../../src/records/load-vocabulary.ts";
import { lookHere } from "../../../src/records/looking/look.ts";
import { remember, rememberAll } from "../../../src/records/looking/remembered.ts";
import { sameImport } from "../../../src/records/looking/same-import.ts";
import { shopLook } from "../../../src/records/looking/shop-look.ts";
import { answered } from "../../../src/records/understanding/questions.ts";
import type { FileUnderstanding } from "../../../src/records/understanding/understanding.ts";

const TODAY = "2026-01-31", never = new AbortController().signal, quiet = () => undefined;
const file = (name: string, text: string) => ({ name, blob: new Blob([text]) });
const JOBS = file("jobs.csv", "Ticket,In,Reel,Work done\nX-1,03/04/2025,Withy 5,line roller bearing replaced\nX-2,05/04/2025,Withy 5,serviced\n");

let engine: Engine, ledger: Ledger;
beforeAll(async () => {
  engine = await openNodeEngine();
  await prepareSchema(engine);
  await loadVocabulary(engine);
});
beforeEach(() => void (ledger = openMemoryLedger()));
afterAll(() => engine.close());
const look = () => shopLook(lookHere, { engine, ledger, today: TODAY, demo: false });

async function seen(): Promise<FileUnderstanding> {
  const found = await look().examine(JOBS, null, never, quiet);
  if (!found) throw new Error("There is something to ask of this file.");
  return found;
}
const dayFirst = ({ questions, proposed }: FileUnderstanding) => questions.reduce((all, question) => answered(all, question, "day first"), proposed);

describe("a look at a file", () => {
  test("asks once, and takes the answers kept for the shape the next time until they are forgotten", async () => {
    const { questions, from_memory, shape_key, ...first } = await seen(), answers = dayFirst({ questions, from_memory, shape_key, ...first });
    expect([questions.length, from_memory]).toEqual([1, false]);
    await rememberAll(ledger, [{ file: JOBS.name, answers, shape_key }]);
    const again = await look().examine({ ...JOBS, name: "february.csv" }, null, never, quiet);
    expect([again?.questions.length, again?.from_memory, again?.proposed]).toEqual([0, true, answers]);
    await remember(ledger, shape_key, null);
    expect((await seen()).from_memory).toBe(false);
  });
  test("has nothing to ask of a picture, or of a list of rows to fix that comes back", async () => {
    expect(await look().examine({ name: "photo.jpg", blob: new Blob([new Uint8Array([0xff, 0xd8, 0xff, 0xe0, 0, 16])]) }, null, never, quiet)).toBeNull();
    expect(await look().examine(file("list.csv", "file,line,column,value,reason,Ticket\njobs.csv,2,In,x,y,X-1\n"), null, never, quiet)).toBeNull();
  });
  test("previews what comes in, says what each finding was read from and how often that is right, and writes nothing", async () => {
    const { records, first } = await look().preview(JOBS, dayFirst(await seen()), never, quiet);
    expect(records).toEqual({ tickets: 2, findings: 1 });
    expect(first[0]?.understood[1]).toMatch(/^replaced: line roller bearing ×1 \(“line roller bearing replaced”, .+, right \d+ times in 100\)$/);
    expect(await ledger.batches()).toEqual([]);
  });
  test("rejects with the signal's reason when cancelled", async () => {
    const abort = new AbortController(), reason = new Error("enough");
    abort.abort(reason);
    await expect(look().examine(JOBS, null, abort.signal, quiet)).rejects.toBe(reason);
  });
});

test("an import is found by the bytes of its files, whatever they are called now, and only when all of them are here", async () => {
  const other = file("other.csv", "Ticket,In,Reel\nY-1,2025-04-05,Ombry 8\n");
  await importFiles([JOBS, other], { engine, ledger, today: TODAY, origin: "files" });
  const batches = await ledger.batches();
  expect((await sameImport([{ ...other, name: "renamed.csv" }, JOBS], batches))?.id).toBe(batches[0]?.id);
  expect(await sameImport([JOBS], batches)).toBeNull();
  expect(await sameImport([file("jobs.csv", "Ticket,In,Reel\n")], batches)).toBeNull();
});
