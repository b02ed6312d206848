import type { Sheet, SheetRow } from "../formats/sheet.ts";
import { isKnownHeading } from "../reading/headings.ts";
import { plainHeading } from "../reading/heading-words.ts";
import type { SheetAnswers, SheetKind } from "./answers.ts";
import { currencyOf } from "./cells/amount.ts";
import { ReelNames } from "./cells/reel-name.ts";
import { watersSaid } from "./cells/said.ts";
import { TicketNumbers } from "./cells/ticket-number.ts";
import { columnLook } from "./column-look.ts";
import type { ColumnLook } from "./column-look.ts";
import { DateEvidence } from "./date-evidence.ts";
import { guessColumns } from "./guess-columns.ts";
import type { ColumnGuess } from "./guess-columns.ts";
import { isSign, kindBySigns } from "./heading-signs.ts";
import { meaningNamed } from "./meanings.ts";
import type { RoutinePart } from "./routine-parts.ts";
import { isDitto } from "./row-shapes.ts";
import { tableStart } from "./table-start.ts";
import type { TableStart } from "./table-start.ts";
import type { KnownModel } from "./understanding.ts";

/** All that is known of a sheet before its rows are read: how it is laid out, and what the values of all its rows prove. */
export interface SheetPlan {
  readonly sheet: Sheet;
  readonly kind: SheetKind;
  readonly start: TableStart;
  /** Meaning of each column, by its place; what was answered wins over what is guessed. */
  readonly means: readonly (string | null)[];
  readonly guesses: readonly ColumnGuess[];
  readonly looks: readonly ColumnLook[];
  readonly rows: number;
  readonly dates: DateEvidence;
  /** How often each currency is named in columns of money; `` counts amounts without one. */
  readonly currencies: ReadonlyMap<string, number>;
  /** Numbers with a comma before one or two last figures, and with a point. */
  readonly decimals: { readonly comma: number; readonly point: number };
  /** Cells that name several waters → how often. */
  readonly mixed_waters: ReadonlyMap<string, number>;
  /** Seals its owner has to be asked about; none before `withRoutineParts`. */
  readonly routine_parts: readonly RoutinePart[];
  readonly numbers: TicketNumbers;
  readonly names: ReelNames;
  readonly answers: SheetAnswers | null;
}

export interface PlanOptions {
  readonly answers: SheetAnswers | null;
  /** The sheet's file, for years in its name. */
  readonly file: string;
  readonly last_day: string;
  readonly models: readonly KnownModel[];
  readonly signal: AbortSignal;
}

/** Rows that are looked at to find the headings and what the columns mean. */
export const headSize = 400;
const WATER = new Set(["water", "salt_flag"]), DATES = new Set(["received_on", "finished_on"]), MONEY = new Set(["labour_charge", "parts_charge", "unit_cost", "net"]);
const COMMA = /\d,\d{1,2}(?!\d)/, POINT = /\d\.\d{1,2}(?![\d.])/;

/** True for a heading that any kind of sheet, or any of our tables, is known by. */
export const isKnownToAny = (heading: string): boolean => isKnownHeading(heading, null) || isSign(plainHeading(heading));

/** Rows under the heading row, in the sheet's order. */
export async function* rowsBelow(sheet: Sheet, { heading_line }: TableStart, signal: AbortSignal): AsyncGenerator<SheetRow[]> {
  for await (const rows of sheet.rows()) {
    signal.throwIfAborted();
    const below = heading_line === null ? rows : rows.filter(({ line }) => line > heading_line);
    if (below.length > 0) yield below;
  }
}

/** What the values of all rows say. */
class Evidence {
  rows = 0;
  readonly dates: DateEvidence;
  readonly currencies = new Map<string, number>();
  readonly decimals = { comma: 0, point: 0 };
  readonly mixed_waters = new Map<string, number>();
  readonly numbers = new TicketNumbers();
  readonly names: ReelNames;
  private readonly means: readonly (string | null)[];

  constructor(means: readonly (string | null)[], { last_day, models }: PlanOptions) {
    this.means = means;
    this.dates = new DateEvidence(last_day);
    this.names = new ReelNames(models);
  }

  see({ cells, line }: SheetRow): void {
    this.rows += 1;
    let came = "", went = "";
    for (let at = 0; at < this.means.length; at += 1) {
      const means = this.means[at], text = (cells[at] ?? "").trim();
      if (!means || text === "" || isDitto(text)) continue;
      if (DATES.has(means)) this.dates.see(text, line, means === "received_on");
      if (means === "received_on") came = text;
      else if (means === "finished_on") went = text;
      else if (means === "ticket_no") this.numbers.see(text);
      else if (means === "reel") this.names.see(text);
      else if (MONEY.has(means)) this.seeMoney(text);
      else if (WATER.has(means) && watersSaid(text).length > 1) this.mixed_waters.set(text, (this.mixed_waters.get(text) ?? 0) + 1);
    }
    if (came !== "" && went !== "") this.dates.seePair(came, went);
  }

  private seeMoney(text: string): void {
    if (!/\d/.test(text)) return;
    const currency = currencyOf(text) ?? "";
    this.currencies.set(currency, (this.currencies.get(currency) ?? 0) + 1);
    if (COMMA.test(text)) this.decimals.comma += 1;
    if (POINT.test(text)) this.decimals.point += 1;
  }
}

/** What was answered, and for columns nothing was said of, the guess; a meaning that was given away is not guessed again. */
function meansOf(labels: readonly string[], guesses: readonly ColumnGuess[], kind: SheetKind, answers: SheetAnswers | null): (string | null)[] {
  const said = new Map(answers?.columns.map(({ column, means }) => [column, means])), taken = new Set(said.values());
  // A mapping written by hand may spell a heading a little otherwise.
  const loosely = new Map([...said].map(([column, means]) => [plainHeading(column), means]));
  return labels.map((label, at) => {
    const means = said.has(label) ? said.get(label) : loosely.get(plainHeading(label)), guess = guesses[at]?.means ?? null;
    if (means !== undefined) return means !== null && meaningNamed(means, kind) ? means : null;
    return guess !== null && taken.has(guess) && !meaningNamed(guess, kind)?.many ? null : guess;
  });
}

/**
 * Looks at a whole sheet once.
 *
 * @throws the signal's reason when cancelled
 */
export async function planSheet(sheet: Sheet, options: PlanOptions): Promise<SheetPlan> {
  const head = await sheet.head(headSize), start = tableStart(head, sheet.has_headings, isKnownToAny);
  const kind = options.answers?.kind ?? kindBySigns(start.headings.map(plainHeading)) ?? "jobs";
  const data = head.filter(({ line }) => start.heading_line === null || line > start.heading_line);
  const looks = start.labels.map((_, at) => columnLook(data.map(({ cells }) => cells[at] ?? "")));
  const guesses = guessColumns(start.headings, looks, kind), means = meansOf(start.labels, guesses, kind, options.answers);
  const evidence = new Evidence(means, options);
  for await (const rows of rowsBelow(sheet, start, options.signal)) for (const row of rows) evidence.see(row);
  evidence.names.settle();
  const { rows, dates, currencies, decimals, mixed_waters, numbers, names } = evidence;
  return { sheet, kind, start, means, guesses, looks, rows, dates, currencies, decimals, mixed_waters, routine_parts: [], numbers, names, answers: options.answers };
}

/** True when enough is understood of a sheet to make records of its rows. */
export function readableSheet({ kind, means }: Pick<SheetPlan, "kind" | "means">): boolean {
  const has = (...names: string[]) => names.some((name) => means.includes(name));
  if (kind === "jobs") return has("received_on") && has("reel", "model");
  if (kind === "till") return has("document") && has("description");
  return kind === "stock" && has("name", "part_no");
}
