import { dayOf, isZeroDay, numberedDay, provedOrder } from "./cells/day.ts";
import type { DateOrder } from "./answers.ts";
import type { DatesSeen } from "./understanding.ts";

interface Place { readonly line: number; readonly value: string }
type Numbered = "day first" | "month first";

const MOST_SHOWN = 10, DAY_MS = 86_400_000;
/** So many times as many proofs for one order make the others slips of the pen. */
const MAJORITY = 2;
/** Dates whose story is followed from row to row; proofs are counted in all rows. */
const FOLLOWED = 2000;
const other = (order: Numbered): Numbered => (order === "day first" ? "month first" : "day first");
const days = (iso: string) => Date.parse(`${iso}T00:00:00Z`) / DAY_MS;

/** Collects what the dates of one sheet say about the order of day and month, and about years. */
export class DateEvidence {
  first_year: number | null = null;
  without_year = 0;
  short_years = 0;
  numbered = 0;
  year_first = 0;
  private readonly last_day: string;
  private readonly proofs: Record<Numbered, number> = { "day first": 0, "month first": 0 };
  private readonly against: Record<Numbered, Place[]> = { "day first": [], "month first": [] };
  private dotted = 0;
  private open = 0;
  private readonly open_examples: string[] = [];
  /** Rows of a column that go back in time, under each order. */
  private readonly back: Record<Numbered, number> = { "day first": 0, "month first": 0 };
  private readonly before: Record<Numbered, string | null> = { "day first": null, "month first": null };
  /** Days between coming in and going out, summed, and how many pairs run backwards. */
  private readonly turn: Record<Numbered, { days: number; pairs: number; backwards: number }> = {
    "day first": { days: 0, pairs: 0, backwards: 0 }, "month first": { days: 0, pairs: 0, backwards: 0 },
  };

  constructor(last_day: string) {
    this.last_day = last_day;
  }

  /** @param main the column in whose order the rows were written down */
  see(text: string, line: number, main: boolean): void {
    if (text === "" || isZeroDay(text)) return;
    const parts = numberedDay(text, this.last_day);
    if (parts) {
      this.numbered += 1;
      if (parts.year === null) this.without_year += 1;
      else this.first_year ??= parts.year;
      if (parts.short_year) this.short_years += 1;
      const proved = provedOrder(parts) as Numbered | null;
      if (proved) this.prove(proved, { line, value: text });
      else if (parts.first !== parts.second && parts.first <= 12) this.doubt(text, parts.dotted);
    } else if (/^\d{4}/.test(text)) {
      this.year_first += 1;
      this.first_year ??= Number(text.slice(0, 4));
    }
    if (main && this.numbered <= FOLLOWED) this.follow(text);
  }

  /** Both days of one job. */
  seePair(came: string, went: string): void {
    if (this.numbered > FOLLOWED) return;
    for (const order of ["day first", "month first"] as const) {
      const from = this.day(came, order), to = this.day(went, order);
      if (from === null || to === null) continue;
      const turn = this.turn[order], took = days(to) - days(from);
      turn.pairs += 1;
      if (took < 0) turn.backwards += 1;
      else turn.days += took;
    }
  }

  /** Days of which the order decides something. */
  get undecided(): number {
    return this.open;
  }

  get examples(): readonly string[] {
    return this.open_examples;
  }

  /**
   * What is known, and what is best where it is not proved.
   *
   * @param pounds amounts are in pounds, as in a country that writes the day first
   */
  settled(pounds: boolean): DatesSeen & { best: DateOrder | null } {
    const { "day first": day, "month first": month } = this.proofs;
    if (this.numbered === 0) return { order: this.year_first > 0 ? "year first" : null, best: "year first", proved: this.year_first > 0, why: "the year stands in front", against: [] };
    if (day + month === 0) return this.byLikeness(pounds);
    const order: Numbered = day >= month ? "day first" : "month first", most = this.proofs[order], least = this.proofs[other(order)];
    const against = this.against[other(order)];
    if (least === 0) return { order, best: order, proved: true, why: `${most} ${most === 1 ? "date has" : "dates have"} a number over 12 that must be the day`, against: [] };
    const clear = most >= least * MAJORITY;
    const why = `${most} ${most === 1 ? "date says" : "dates say"} ${order} and ${least} ${least === 1 ? "says" : "say"} ${other(order)}`;
    return { order: clear ? order : null, best: clear ? order : null, proved: false, why, against: clear ? against : [...this.against["day first"], ...this.against["month first"]].slice(0, MOST_SHOWN) };
  }

  private prove(order: Numbered, place: Place): void {
    this.proofs[order] += 1;
    if (this.against[order].length < MOST_SHOWN) this.against[order].push(place);
  }

  private doubt(text: string, dotted: boolean): void {
    this.open += 1;
    if (dotted) this.dotted += 1;
    if (this.open_examples.length < 3 && !this.open_examples.includes(text)) this.open_examples.push(text);
  }

  private day(text: string, order: Numbered): string | null {
    const day = dayOf(text, { order, year: this.first_year, last_day: this.last_day });
    return typeof day === "string" ? day : null;
  }

  private follow(text: string): void {
    for (const order of ["day first", "month first"] as const) {
      const day = this.day(text, order), before = this.before[order];
      if (day === null) continue;
      if (before !== null && day < before) this.back[order] += 1;
      this.before[order] = day;
    }
  }

  /** No number over 12: what makes the better story, as reasons that agree. */
  private byLikeness(pounds: boolean): DatesSeen & { best: DateOrder | null } {
    const said: [Numbered, string][] = [], { "day first": day, "month first": month } = this.turn;
    const slower: Numbered = day.backwards + day.days > month.backwards + month.days ? "day first" : "month first", quick = this.turn[other(slower)], slow = this.turn[slower];
    const mean = (turn: typeof day) => turn.days / Math.max(1, turn.pairs - turn.backwards);
    if (quick.backwards === 0 && (slow.backwards > 0 || mean(slow) > 3 * mean(quick))) said.push([other(slower), `jobs would take ${Math.round(mean(quick))} days, and the other way ${Math.round(mean(slow))} or end before they begin`]);
    if (this.back["day first"] !== this.back["month first"]) {
      const steady: Numbered = this.back["day first"] < this.back["month first"] ? "day first" : "month first";
      said.push([steady, "so the rows stand in the order of their days"]);
    }
    if (this.dotted > 0) said.push(["day first", "points between the numbers are usual where the day comes first"]);
    if (pounds) said.push(["day first", "amounts are in pounds"]);
    const orders = new Set(said.map(([order]) => order)), best = orders.size === 1 ? said[0]?.[0] ?? null : null;
    const why = `no date has a number over 12${best === null ? "" : `; ${best} is likely: ${said.map(([, reason]) => reason).join("; ")}`}`;
    return { order: best, best, proved: false, why, against: [] };
  }
}
