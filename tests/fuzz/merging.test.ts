import fc from "fast-check";
import { beforeAll, expect, test } from "vitest";
import { csvText } from "../../src/records/csv-out.ts";
import { conflicts, settlement } from "../../src/records/merging/conflicts.ts";
import { decideNames, decideTicket, forgetName, forgetTicket } from "../../src/records/merging/decisions.ts";
import { names } from "../../src/records/merging/names.ts";
import { putTogether } from "../../src/records/merging/put-together.ts";
import { emptied, openBench } from "../records/bench.ts";
import type { Bench } from "../records/bench.ts";
import { fuzzRuns } from "./any-file.ts";

let bench: Bench;
beforeAll(async () => { bench = await openBench(); });
/** Each run brings some six files in, several times over. */
const runs = (few: number) => ({ numRuns: Math.ceil(fuzzRuns(few * 6) / 6) });

const TICKET = ["ticket_no", "received_on", "finished_on", "maker", "model", "serial", "labour_min", "outcome", "note"];
const answers = async () => ({
  visits: await bench.engine.rows("select ticket_no, received_on, finished_on, maker, model, serial, labour_min, outcome, note, visit_no from visits order by ticket_no"),
  findings: await bench.engine.rows("select ticket_no, position, qty from findings order by ticket_no, position, qty"),
  conflicts: await bench.engine.rows("select ticket_no from conflicts order by ticket_no"),
});

/** Five jobs as they end; an export has some of them, each still open or finished, and lacks some columns. */
const END = [1, 2, 3, 4, 5].map((n) => [`R-${n}`, `2026-03-0${n}`, `2026-04-0${n}`, "Eldmere", n === 3 ? "withy5" : "Withy 5", n > 3 ? "W 1" : "w-1", `${n * 10}`, "returned", `job ${n}`]);
const asOpen = (row: readonly string[]) => row.map((cell, at) => (TICKET[at] === "finished_on" || TICKET[at] === "labour_min" ? "" : TICKET[at] === "outcome" ? "waiting" : TICKET[at] === "note" ? "waits" : cell));
const EXPORT = fc.record({
  jobs: fc.array(fc.constantFrom("none", "open", "finished"), { minLength: 5, maxLength: 5 }),
  without: fc.subarray(["maker", "serial", "note", "labour_min"]), writing: fc.constantFrom("R-", "r", "R "),
}).map(({ jobs, without, writing }) => {
  const rows = END.flatMap((row, at) => (jobs[at] === "none" ? [] : [(jobs[at] === "open" ? asOpen(row) : row).map((cell, place) => (place === 0 ? cell.replace("R-", writing) : cell))]));
  const places = TICKET.map((_, at) => at).filter((at) => !without.includes(TICKET[at] ?? ""));
  const findings = rows.map((row) => [row[0] ?? "", "rotor", "1"]);
  return {
    "t.csv": csvText(places.map((at) => TICKET[at] ?? ""), rows.map((row) => places.map((at) => row[at] ?? ""))),
    "f.csv": csvText(["ticket_no", "position", "qty"], findings),
  };
});

test("overlapping exports of the same jobs give the same answers in any order, and no question", async () => {
  await fc.assert(fc.asyncProperty(fc.uniqueArray(EXPORT, { minLength: 2, maxLength: 3, selector: (one) => one["t.csv"] }), async (exports) => {
    const seen = [];
    for (const order of [exports, [...exports].reverse()]) {
      await emptied(bench);
      // The shop's own way of writing numbers is that of most of them.
      await bench.bringIn({ "own.csv": `ticket_no,received_on,model\n${Array.from({ length: 30 }, (_, n) => `R-${100 + n},2026-01-01,Vessik 100\n`).join("")}` });
      for (const one of order) await bench.bringIn(one);
      seen.push(await answers());
    }
    expect(seen[0]?.conflicts).toEqual([]);
    expect(seen[1]).toEqual(seen[0]);
  }), runs(6));
}, 600_000);

const few = (...words: string[]) => fc.constantFrom(...words);
const ROW = fc.tuple(few("R-1", "R-2", "R1"), few("2026-03-01", "2026-03-02"), few("returned", "waiting", ""), few("Eldmere", "Eldmer", ""), few("Withy 5", "Withy5", "Withey 5", "Ombry 8"), few("", "30", "40"), few("rotor", "body"));
const SHEET = fc.array(ROW, { minLength: 1, maxLength: 5 }).map((rows) => csvText(["ticket_no", "received_on", "outcome", "maker", "model", "labour_min", "part"], rows));

test("an import taken out, a merge undone and a conflict opened again leave everything as it was before", async () => {
  await fc.assert(fc.asyncProperty(SHEET, SHEET, async (one, other) => {
    await emptied(bench);
    await bench.bringIn({ "a.csv": one });
    const first = await answers(), { id, kept } = await bench.bringIn({ "b.csv": other });
    const before = await answers(), { proposed } = await names(bench.engine, bench.ledger), open = await conflicts(bench.engine);
    await decideNames(bench.ledger, proposed.map(({ from, to }) => ({ from: { maker: from.maker, model: from.model }, to: { maker: to.maker, model: to.model }, decided_on: "2026-06-01" })));
    for (const conflict of open) await decideTicket(bench.ledger, settlement(conflict, "two jobs", conflict.versions[0]?.row_key ?? "", "2026-06-01"));
    await putTogether(bench.engine, bench.ledger);
    expect((await conflicts(bench.engine)).map(({ ticket_no }) => ticket_no).filter((number) => open.some(({ ticket_no }) => ticket_no === number))).toEqual([]);
    for (const { from } of proposed) await forgetName(bench.ledger, { maker: from.maker, model: from.model });
    for (const { ticket_no } of open) await forgetTicket(bench.ledger, ticket_no);
    await putTogether(bench.engine, bench.ledger);
    expect(await answers()).toEqual(before);
    if (kept) await bench.takeOut(id);
    expect(await answers()).toEqual(first);
  }), runs(6));
}, 600_000);
