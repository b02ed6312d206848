import type { SheetRow } from "../formats/sheet.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import { BLANK, HEADINGS_AGAIN } from "../reading/remarks.ts";
import { Wrong } from "../checking/wrong.ts";
import { jobNamed, plainWords, reelKindNamed } from "../vocabulary.ts";
import type { ReelKind } from "../vocabulary.ts";
import { amountOf } from "./cells/amount.ts";
import { dayOf } from "./cells/day.ts";
import type { ReelName } from "./cells/reel-name.ts";
import type { Conventions } from "./conventions.ts";
import { RowFindings } from "./row-findings.ts";
import { FixCounts } from "./row-outcome.ts";
import type { MadeRecord, RowEnd, RowMaker, RowOutcome } from "./row-outcome.ts";
import { CREDIT, TOTALS, isFilled, isHeadings, isTotals } from "./row-shapes.ts";
import { ticketNumbers } from "./several-reels.ts";
import type { SheetPlan } from "./sheet-plan.ts";

export const OVER_THE_COUNTER = "dropped as a sale over the counter: no job stands on its bill";
export const NO_PART = "dropped: it names no part; its amount was added to the job";

interface Line {
  readonly row: SheetRow;
  readonly document: string; readonly day: string | null; readonly refs: readonly string[]; readonly part_no: string; readonly description: string;
  readonly qty: number; readonly net: number;
}

const LABOUR = /^lab/i, WORK = /\b(?:service|labou?r|repair|diagnosis|quote|respool)\b/i, REFUND = /\b(?:refund|credit|return)\b/i;
const IN_BRACKETS = /\(([^)]*)\)/;
const isLabour = ({ part_no, description }: Line) => LABOUR.test(part_no) || (WORK.test(description) && !/\d+x\d+/.test(description));
const round = (value: number) => Math.round(value * 100) / 100;

/** Makes tickets and findings of a till's sales, one line an item: the lines of one bill belong together. */
export class TillRows implements RowMaker {
  readonly remarks = new FixCounts();
  readonly findings: RowFindings;
  private readonly plan: SheetPlan;
  private readonly conventions: Conventions;
  private readonly last_day: string;
  private readonly waiting = new Map<string, Line[]>();

  constructor({ plan, conventions, last_day, book }: { plan: SheetPlan; conventions: Conventions; last_day: string; book: SpellingBook | null }) {
    this.plan = plan;
    this.conventions = conventions;
    this.last_day = last_day;
    this.findings = new RowFindings(book, this.remarks);
  }

  take(row: SheetRow): readonly RowEnd[] {
    const dropped = (reason: string): RowEnd[] => [{ row, outcome: { end: "dropped", reason } }];
    if (!row.cells.some(isFilled)) return dropped(BLANK);
    if (isHeadings(row.cells, this.plan.start.headings)) return dropped(HEADINGS_AGAIN);
    if (isTotals(row.cells, this.cell(row, "document") !== "")) return dropped(TOTALS);
    const line = this.line(row);
    this.waiting.set(line.document, [...this.waiting.get(line.document) ?? [], line]);
    return [];
  }

  finish(): readonly RowEnd[] {
    return [...this.waiting.values()].flatMap((lines) => this.bill(lines));
  }

  private cell({ cells }: SheetRow, means: string): string {
    const at = this.plan.means.indexOf(means);
    return at === -1 ? "" : (cells[at] ?? "").trim();
  }

  private heading(means: string): string {
    return this.plan.start.labels[this.plan.means.indexOf(means)] ?? means;
  }

  private line(row: SheetRow): Line {
    const date = dayOf(this.cell(row, "received_on"), { ...this.conventions, last_day: this.last_day }), ref = this.cell(row, "ticket_no"), { decimal } = this.conventions;
    return {
      row, document: this.cell(row, "document"), day: date instanceof Wrong ? null : date, refs: ref === "" ? [] : ticketNumbers(ref), part_no: this.cell(row, "part_no"),
      description: this.cell(row, "description"), qty: amountOf(this.cell(row, "qty"), decimal)?.value ?? 1, net: amountOf(this.cell(row, "net"), decimal)?.value ?? 0,
    };
  }

  private bill(lines: readonly Line[]): RowEnd[] {
    const all = new Set(lines.flatMap(({ refs }) => refs)), only = all.size === 1 ? [...all] : [];
    const jobs = new Map<string, Line[]>(), ends: RowEnd[] = [];
    for (const line of lines) {
      const refs = line.refs.length > 0 ? line.refs : only, [ref] = refs, end = this.withoutJob(line, refs);
      if (end || ref === undefined) ends.push({ row: line.row, outcome: end ?? { end: "dropped", reason: OVER_THE_COUNTER } });
      else {
        if (line.refs.length === 0) this.remarks.add("the job was taken from the other lines of its bill", line.description, ref);
        jobs.set(ref, [...jobs.get(ref) ?? [], line]);
      }
    }
    return [...ends, ...[...jobs].flatMap(([ticket_no, own]) => this.job(ticket_no, own))];
  }

  private withoutJob(line: Line, refs: readonly string[]): RowOutcome | null {
    if (line.qty < 0 || line.net < 0 || REFUND.test(line.description)) return { end: "dropped", reason: CREDIT };
    if (refs.length < 2) return null;
    const reason = `“${refs.join("/")}” names ${refs.length} jobs, and nothing says what belongs to which`;
    return { end: "to fix", faults: [{ column: this.heading("ticket_no"), value: refs.join("/"), reason }] };
  }

  private job(ticket_no: string, lines: readonly Line[]): RowEnd[] {
    const labour = lines.filter(isLabour), parts = lines.filter((line) => !isLabour(line)), [first] = labour, names = this.plan.names;
    const named = lines.flatMap(({ description }) => IN_BRACKETS.exec(description)?.[1] ?? []).find((text) => names.nameOf(text) !== null) ?? "", reel = names.nameOf(named);
    const day = lines[0]?.day ?? null;
    if (!reel || day === null || !first) {
      const reason = day === null ? "the day of the sale cannot be read" : `no line of this bill says which reel job ${ticket_no} was`;
      return lines.map(({ row }) => ({ row, outcome: { end: "to fix", faults: [{ column: this.heading("description"), value: lines[0]?.description ?? "", reason }] } }));
    }
    const kind = reelKindNamed(plainWords(first.description).split(" ").find((word) => reelKindNamed(word) !== null) ?? "");
    const ticket = this.ticket(ticket_no, { reel, named, day, kind, first, labour, parts });
    this.remarks.add("the day of the sale stands for the day the reel came in and went", ticket_no, day);
    return lines.map((line) => ({ row: line.row, outcome: line === first ? { end: "in", records: [ticket] } : this.part(ticket_no, line, kind) }));
  }

  private ticket(ticket_no: string, of: { reel: ReelName; named: string; day: string; kind: ReelKind | null; first: Line; labour: readonly Line[]; parts: readonly Line[] }): MadeRecord {
    const words = plainWords(of.first.description.replace(IN_BRACKETS, "")).split(" ").filter((word) => reelKindNamed(word) === null).join(" ");
    const sum = (lines: readonly Line[]) => String(round(lines.reduce((all, { net }) => all + net, 0)));
    return { table: "tickets", cells: {
      ticket_no, received_on: of.day, finished_on: of.day, maker: of.reel.maker ?? "", model: of.reel.model, reel_kind: of.kind ?? "", job: jobNamed(words) ?? "",
      labour_charge: sum(of.labour), parts_charge: sum(of.parts), outcome: "returned", note: of.labour.map(({ description }) => description).join(" | "),
    }, written: { maker: null, model: of.named.trim().replace(/\s+/g, " ") } };
  }

  private part(ticket_no: string, line: Line, kind: ReelKind | null): RowOutcome {
    if (isLabour(line)) return { end: "dropped", reason: NO_PART };
    const found = this.findings.records(ticket_no, [{ heading: "description", text: line.description, cell: "parts" }], kind, "");
    if (found.length === 0) return { end: "dropped", reason: NO_PART };
    const records = found.map((one, at) => ({ ...one, cells: { ...one.cells, qty: String(Math.max(1, Math.round(line.qty))), part_no: at === 0 ? line.part_no : "" } }));
    return { end: "in", records };
  }
}
