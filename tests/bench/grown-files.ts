import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Papa from "papaparse";

const DEMO = join(import.meta.dirname, "../../data/demo");
/** Columns that name a job, a reel or a group of reels that came together: each round has its own. */
const OWN: Readonly<Record<string, readonly string[]>> = { tickets: ["ticket_no", "serial", "batch"], findings: ["ticket_no"] };
const ONCE = ["models", "parts", "fits", "suppliers", "orders"] as const;

export type Text = Readonly<Record<string, string>>;

function read(table: string): { rows: Text[]; fields: string[] } {
  const { data, meta } = Papa.parse<Text>(readFileSync(join(DEMO, `${table}.csv`), "utf8"), { header: true, skipEmptyLines: true });
  return { rows: data, fields: meta.fields ?? [] };
}

const later = (day: string | undefined, days: number) => (day ? new Date(Date.parse(day) + days * 86_400_000).toISOString().slice(0, 10) : "");

/** A row of round `n`: names of its own, and other days, so that the months fill as a large shop fills them. */
function ofRound(row: Text, table: string, n: number): Text {
  if (n === 0) return row;
  const own = Object.fromEntries((OWN[table] ?? []).filter((name) => row[name]).map((name) => [name, `${row[name]}-${n}`]));
  const days = table === "tickets" ? { received_on: later(row["received_on"], -(n * 37 % 150)), finished_on: later(row["finished_on"], -(n * 37 % 150)) } : {};
  return { ...row, ...own, ...days };
}

export interface GrownTables { readonly tickets: readonly Text[]; readonly findings: readonly Text[] }

/**
 * The demo's tickets and findings as large tables of text, with `findings` findings or a few more, round by round so that memory need hold one;
 * under the demo's own number the newest tickets alone, with their findings.
 */
export function* grownRounds(findings: number): Generator<GrownTables> {
  const tickets = read("tickets").rows, found = read("findings").rows;
  if (findings < found.length) {
    const share = Math.ceil(tickets.length * findings / found.length);
    const some = tickets.toSorted((a, b) => ((a["received_on"] ?? "") < (b["received_on"] ?? "") ? 1 : -1)).slice(0, share);
    const taken = new Set(some.map((row) => row["ticket_no"]));
    yield { tickets: some, findings: found.filter((row) => taken.has(row["ticket_no"])) };
    return;
  }
  const rounds = Math.ceil(findings / found.length);
  for (let n = 0; n < rounds; n += 1) {
    // Made when asked for: whoever writes one table after the other wants one of them at a time.
    yield { get tickets() { return tickets.map((row) => ofRound(row, "tickets", n)); }, get findings() { return found.map((row) => ofRound(row, "findings", n)); } };
  }
}

function grownRows(findings: number): GrownTables & { readonly fields: { tickets: string[]; findings: string[] } } {
  const all = [...grownRounds(findings)];
  return { tickets: all.flatMap(({ tickets }) => tickets), findings: all.flatMap(({ findings: rows }) => rows), fields: { tickets: read("tickets").fields, findings: read("findings").fields } };
}

/** Text of one table, some thousand rows at a time: a million rows make a longer text than one string should hold. */
function csv(fields: string[], rows: readonly Text[]): Buffer {
  const pieces: Buffer[] = [Buffer.from(`${fields.join(",")}\n`)];
  for (let at = 0; at < rows.length; at += 50_000) pieces.push(Buffer.from(`${Papa.unparse(rows.slice(at, at + 50_000), { columns: fields, header: false, newline: "\n" })}\n`));
  return Buffer.concat(pieces);
}

/** Writes all seven tables of a shop with so many findings into a folder. @returns their paths, and how many findings there are */
export function grownFiles(folder: string, findings: number): { paths: string[]; findings: number } {
  const grown = grownRows(findings);
  const paths = [...ONCE, "tickets", "findings"].map((table) => join(folder, `${table}.csv`));
  for (const table of ONCE) writeFileSync(join(folder, `${table}.csv`), readFileSync(join(DEMO, `${table}.csv`)));
  writeFileSync(join(folder, "tickets.csv"), csv(grown.fields.tickets, grown.tickets));
  writeFileSync(join(folder, "findings.csv"), csv(grown.fields.findings, grown.findings));
  return { paths, findings: grown.findings.length };
}
