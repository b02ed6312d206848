import type { Fault } from "../checking/row.ts";
import { Wrong, quoted } from "../checking/wrong.ts";
import type { SheetRow } from "../formats/sheet.ts";
import type { SpellingBook } from "../notes/own-spellings.ts";
import { BLANK, HEADINGS_AGAIN } from "../reading/remarks.ts";
import { families, familyNamed } from "../vocabulary.ts";
import { amountOf, numberOf } from "./cells/amount.ts";
import { dayOf } from "./cells/day.ts";
import { partSize, stockCount } from "./cells/stock-count.ts";
import type { Conventions } from "./conventions.ts";
import { RowFindings } from "./row-findings.ts";
import { FixCounts } from "./row-outcome.ts";
import type { RowEnd, RowMaker, RowOutcome } from "./row-outcome.ts";
import { ASSORTED, Dittos, TOTALS, isFilled, isHeadings, isTotals } from "./row-shapes.ts";
import type { SheetPlan } from "./sheet-plan.ts";

const ASST = /\b(?:asst|assorted|assortment|various|mixed|misc)\b/i;
const PLAIN = ["name", "supplier", "material", "replaces"] as const, NUMBERS = ["min_order_qty", "lead_days", "lead_days_sd"] as const;
const partsFamily = new Map(families.map(({ family, parts_family }) => [family, parts_family]));

/** Makes parts of a stock list. */
export class StockRows implements RowMaker {
  readonly remarks = new FixCounts();
  readonly findings: RowFindings;
  private readonly plan: SheetPlan;
  private readonly conventions: Conventions;
  private readonly last_day: string;
  private readonly dittos = new Dittos();
  private readonly numbers = new Set<string>();

  constructor({ plan, conventions, last_day, book }: { plan: SheetPlan; conventions: Conventions; last_day: string; book: SpellingBook | null }) {
    this.plan = plan;
    this.conventions = conventions;
    this.last_day = last_day;
    this.findings = new RowFindings(book, this.remarks);
  }

  take(row: SheetRow): readonly RowEnd[] {
    return [{ row, outcome: this.outcome(row) }];
  }

  finish(): readonly RowEnd[] {
    return [];
  }

  private outcome(row: SheetRow): RowOutcome {
    const dropped = (reason: string): RowOutcome => ({ end: "dropped", reason });
    if (!row.cells.some(isFilled)) return dropped(BLANK);
    if (isHeadings(row.cells, this.plan.start.headings)) return dropped(HEADINGS_AGAIN);
    const { cells } = this.dittos.filled(row.cells), cell = (means: string) => (cells[this.plan.means.indexOf(means)] ?? "").trim();
    if (isTotals(cells, cell("supplier") !== "" || cell("part_no") !== "")) return dropped(TOTALS);
    if (ASST.test(cell("name")) || ASST.test(cell("unit_cost"))) return dropped(ASSORTED);
    return this.part(cell);
  }

  private part(cell: (means: string) => string): RowOutcome {
    const faults: Fault[] = [], wrong = (means: string, reason: string) => faults.push({ column: this.plan.start.labels[this.plan.means.indexOf(means)] ?? means, value: cell(means), reason });
    const pack = numberOf(cell("pack_qty"), this.conventions.decimal), name = cell("name"), size_cell = cell("size_or_model"), size = cell("size") || partSize(name, size_cell) || "";
    if (name === "" && cell("part_no") === "") wrong("name", "the row names no part; write its name or its number");
    const out: Record<string, string> = { part_no: cell("part_no") || this.number(name, size_cell), size, family: this.family(cell("family"), name), pack_qty: pack === null ? "" : String(pack) };
    for (const means of PLAIN) out[means] = cell(means);
    for (const means of NUMBERS) out[means] = String(numberOf(cell(means), this.conventions.decimal) ?? "");
    if (size_cell !== "" && partSize("", size_cell) === null) out["name"] = `${name} (${size_cell})`;
    const cost = this.cost(cell("unit_cost"), pack), count = cell("on_hand") === "" ? null : stockCount(cell("on_hand"), pack);
    if (cost instanceof Wrong) wrong("unit_cost", cost.reason);
    else out["unit_cost"] = cost;
    if (cell("on_hand") !== "" && !count) wrong("on_hand", `${quoted(cell("on_hand"))} is no number of pieces; write how many there are, such as 12`);
    out["on_hand"] = count ? String(count.on_hand) : "";
    out["on_order"] = count && count.on_order !== null ? String(count.on_order) : String(numberOf(cell("on_order"), this.conventions.decimal) ?? "");
    if (count && /\D/.test(cell("on_hand"))) this.remarks.add("packs and pieces were counted together", cell("on_hand"), `${count.on_hand}${count.on_order === null ? "" : `, ${count.on_order} under way`}`);
    out["due_on"] = this.due(cell("due_on"));
    if (size !== "" && size_cell !== "" && !size_cell.includes(size)) this.remarks.add("a size was written our way", size_cell, size);
    return faults.length > 0 ? { end: "to fix", faults } : { end: "in", records: [{ table: "parts", cells: out }] };
  }

  /** A part without a number is called by its name and size, as written. */
  private number(name: string, size: string): string {
    const number = [name, size].filter((one) => one !== "").join(" ");
    if (!this.numbers.has(number)) this.remarks.add("the part has no number; its name and size stand for one", name, number);
    this.numbers.add(number);
    return number;
  }

  private family(written: string, name: string): string {
    const own = familyNamed(written), text = { heading: "name", text: name, cell: "parts" as const };
    const family = own ?? this.findings.reading(text, null, "").findings[0]?.family ?? null;
    return family === null ? "" : partsFamily.get(family) ?? "";
  }

  private cost(text: string, pack: number | null): string | Wrong {
    if (text === "") return "";
    const read = amountOf(text, this.conventions.decimal), { currency } = this.conventions;
    if (!read) return new Wrong(`${quoted(text)} is not an amount; write figures alone, such as 12.50`);
    if (read.currency !== null && currency !== null && read.currency !== currency) return new Wrong(`${quoted(text)} is in another currency than the other amounts (${currency}); nothing is converted, so write it in ${currency}`);
    if (!read.per_pack) return String(read.value);
    if (pack === null || pack <= 0) return new Wrong(`${quoted(text)} is for a pack, and nothing says how many are in one; write that too, or the price of one`);
    const each = Math.round((read.value / pack) * 1e4) / 1e4;
    this.remarks.add("the price of a pack was shared out to its pieces", text, String(each));
    return String(each);
  }

  private due(text: string): string {
    if (text === "") return "";
    const day = dayOf(text, { ...this.conventions, last_day: this.last_day });
    if (typeof day === "string") return day;
    this.remarks.add("a word for the day it is due was left out", text, "empty");
    return "";
  }
}
