import { columnsOf } from "../../db/arrow-columns.ts";
import type { SqlValue } from "../../db/engine.ts";
import type { RecordsFilter } from "../filter.ts";
import type { WorkRow } from "./work.ts";

/** The name under which a worker keeps them. */
export const JOBS = "finished jobs";

/** A column of few different words: each once, and which of them every row has. */
interface Words { readonly words: readonly (string | null)[]; readonly of: Int32Array }

function wordsOf(values: readonly SqlValue[]): Words {
  const known = new Map<string | null, number>();
  const of = Int32Array.from(values as (string | null)[], (value) => known.get(value) ?? known.set(value, known.size).size - 1);
  return { words: [...known.keys()], of };
}

/** A column in which every text is another: one long text, and where each ends. */
interface Texts { readonly all: string; readonly ends: Int32Array }

function textsOf(values: readonly string[]): Texts {
  let end = 0;
  return { all: values.join(""), ends: Int32Array.from(values, (value) => (end += value.length)) };
}

const numbersOf = (values: readonly SqlValue[]) => Float64Array.from(values as (number | null)[], (value) => value ?? NaN);
const known = (value: number | undefined): number | null => (value === undefined || Number.isNaN(value) ? null : value);

interface JobColumns {
  readonly ticket_no: Texts;
  readonly received_on: Words;
  readonly job: Words;
  readonly reel_kind: Words;
  readonly maker: Words;
  readonly model: Words;
  readonly tier: Words;
  readonly technician: Words;
  readonly source_file: Words;
  readonly source_line: Float64Array;
  readonly labour_min: Float64Array;
  readonly labour_charge: Float64Array;
  readonly parts_replaced: Int32Array;
  readonly warranty: Uint8Array;
  readonly in_batch: Uint8Array;
  readonly stuck_screws: Uint8Array;
}

/** A row of `work.sql` that holds nothing but its place in the columns. */
class KeptJob implements WorkRow {
  readonly #of: JobColumns;
  readonly #at: number;

  constructor(of: JobColumns, at: number) {
    this.#of = of;
    this.#at = at;
  }

  #word({ words, of }: Words): string | null { return words[of[this.#at] as number] ?? null; }

  get ticket_no(): string {
    const { all, ends } = this.#of.ticket_no;
    return all.slice(this.#at === 0 ? 0 : ends[this.#at - 1], ends[this.#at]);
  }

  get received_on(): string { return this.#word(this.#of.received_on) as string; }
  get job(): string | null { return this.#word(this.#of.job); }
  get reel_kind(): string | null { return this.#word(this.#of.reel_kind); }
  get maker(): string | null { return this.#word(this.#of.maker); }
  get model(): string { return this.#word(this.#of.model) as string; }
  get tier(): string | null { return this.#word(this.#of.tier); }
  get technician(): string | null { return this.#word(this.#of.technician); }
  get source_file(): string | null { return this.#word(this.#of.source_file); }
  get source_line(): number | null { return known(this.#of.source_line[this.#at]); }
  get labour_min(): number | null { return known(this.#of.labour_min[this.#at]); }
  get labour_charge(): number | null { return known(this.#of.labour_charge[this.#at]); }
  get parts_replaced(): number { return this.#of.parts_replaced[this.#at] as number; }
  get warranty(): boolean { return this.#of.warranty[this.#at] === 1; }
  get in_batch(): boolean { return this.#of.in_batch[this.#at] === 1; }
  get stuck_screws(): boolean { return this.#of.stuck_screws[this.#at] === 1; }
}

/** All finished jobs, oldest first, as columns, with a row to each that reads them. */
export interface KeptJobs { readonly columns: JobColumns; readonly rows: readonly WorkRow[] }

/** Lays the stream of `work.sql` without a filter out for asking. */
export function keptJobs(stream: Uint8Array): KeptJobs {
  const found = columnsOf(stream), of = (name: string) => found[name] ?? [], words = (name: string) => wordsOf(of(name)), flags = (name: string) => Uint8Array.from(of(name), Number);
  const columns: JobColumns = {
    ticket_no: textsOf(of("ticket_no") as string[]), received_on: words("received_on"), job: words("job"), reel_kind: words("reel_kind"), maker: words("maker"), model: words("model"),
    tier: words("tier"), technician: words("technician"), source_file: words("source_file"), source_line: numbersOf(of("source_line")), labour_min: numbersOf(of("labour_min")),
    labour_charge: numbersOf(of("labour_charge")), parts_replaced: Int32Array.from(of("parts_replaced") as number[]), warranty: flags("warranty"), in_batch: flags("in_batch"), stuck_screws: flags("stuck_screws"),
  };
  return { columns, rows: Array.from({ length: columns.labour_min.length }, (_, at) => new KeptJob(columns, at)) };
}

/** Which words of a column a filter lets through. */
const allowed = ({ words }: Words, is: (word: string | null) => boolean) => Uint8Array.from(words, (word) => Number(is(word)));

/**
 * The rows that `work.sql` gives for the same filter, in the same order, from what is kept.
 *
 * @throws {RangeError} when the filter names a maker, a model or a water: Labour's room filters by none of them
 */
export function jobsFrom({ columns: { reel_kind, received_on }, rows }: KeptJobs, filter: RecordsFilter): readonly WorkRow[] {
  const { from, to } = filter, other = filter.maker ?? filter.model ?? filter.water;
  if (other !== null) throw new RangeError(`jobsFrom: needs a filter of kind and days alone, got ${other}`);
  if (filter.reel_kind === null && from === null && to === null) return rows;
  const kinds = allowed(reel_kind, (kind) => filter.reel_kind === null || kind === filter.reel_kind);
  const days = allowed(received_on, (day) => day !== null && (from === null || day >= from) && (to === null || day <= to));
  return rows.filter((_, at) => kinds[reel_kind.of[at] as number] === 1 && days[received_on.of[at] as number] === 1);
}
