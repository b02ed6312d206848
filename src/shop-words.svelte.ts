import { ELSEWHERE_SETTING, elsewhereText, readElsewhere, type Elsewhere } from "./answers/elsewhere/elsewhere.ts";
import { HAND_GROUPS_SETTING, readHandGroups, type HandGroup } from "./answers/interchange/hand-groups.ts";
import { BENCH_RATES_SETTING, benchRatesText, NO_RATES, readBenchRates, type BenchRates } from "./answers/labour/bench-rates.ts";
import { BENCH_HOURS_SETTING } from "./answers/bench-load/bench-hours.ts";
import { MORNING_LOOKS_SETTING } from "./answers/morning/last-look.ts";
import { BENCH_CALENDAR_SETTING } from "./answers/season/bench-calendar.ts";
import { readRuleChanges, RULE_CHANGES_SETTING, ruleChangesText, type RuleChange } from "./answers/rule-changes/rule-changes.ts";
import { FREE_FROM_SETTING, freeFromText, readFreeFrom } from "./answers/stock/free-from.ts";
import { ORDER_MARKS_SETTING, orderMarksText, readOrderMarks, type OrderMark } from "./answers/stock/order-marks.ts";
import { readServiceLevels, SERVICE_LEVELS_SETTING, serviceLevelsText, USUAL_LEVELS, type ServiceLevels } from "./answers/stock/service-levels.ts";
import { listTogether, valuesTogether } from "./records/ledger/changes-together.ts";
import type { Changed, Ledger } from "./records/ledger/ledger.ts";
import { readWriting, WRITING_SETTING } from "./way-of-writing.ts";
import { FAILURE_GRADE, readFailureGrade } from "./records/merging/put-together.ts";
import { INVENTED } from "./world.ts";

const SHOP = "shop", CURRENCY = "currency";

/** Rates of the invented shop (data/demo-shop). */
const INVENTED_RATES: BenchRates = { hour_price: 54, hour_cost: 31, beside_min: 17 };

/** What is written over the demo goes out with it. */
const OVER_THE_DEMO = [RULE_CHANGES_SETTING, BENCH_RATES_SETTING, HAND_GROUPS_SETTING, ORDER_MARKS_SETTING, FREE_FROM_SETTING, BENCH_HOURS_SETTING, BENCH_CALENDAR_SETTING, SERVICE_LEVELS_SETTING, MORNING_LOOKS_SETTING, ELSEWHERE_SETTING];

/** Takes out what was written over the demo. */
export const WITHOUT_DEMO_WORDS: Changed = Object.fromEntries(OVER_THE_DEMO.map((setting) => [setting, null]));

/**
 * What the owner wrote about the shop itself, as the app remembers it while it is open. Another window may write at the same
 * time: of lists and of values by name both changes stand, and `seen` is what the change began with, where that is not what is shown.
 */
export abstract class ShopWords {
  /** Heading of printed sheets, else null. */
  shop = $state<string | null>(null);
  /** The shop's word for its money, "" until set. */
  currency = $state("");
  /** Locale by which dates and numbers are written; null for the browser's. */
  way_of_writing = $state<string | null>(null);
  /** Changes of habit the owner dated, oldest first. */
  rule_changes = $state.raw<readonly RuleChange[]>([]);
  /** What an hour at the bench brings in and costs. */
  bench_rates = $state.raw<BenchRates>(NO_RATES);

  /** Parts the owner joined or split, and sizes said; the later wins. */
  hand_groups = $state.raw<readonly HandGroup[]>([]);
  /** Orders marked as sent or arrived, oldest first. */
  order_marks = $state.raw<readonly OrderMark[]>([]);

  /** Order value from which each supplier sends free of carriage. */
  free_from = $state.raw<Readonly<Record<string, number>>>({});

  /** Chance of not running out before the next order arrives, by class of part. */
  service_levels = $state.raw<ServiceLevels>(USUAL_LEVELS);

  /** What other shops counted, where a roll-up of theirs was taken in. */
  elsewhere = $state.raw<Elsewhere | null>(null);

  /** What the owner wrote that the stock advice goes by. */
  get stock_words() { return { rule_changes: this.rule_changes, marks: this.order_marks, free_from: this.free_from, targets: this.service_levels }; }

  /** Where the words are kept. */
  protected abstract get kept(): Ledger;

  /** Reads them again; the demo has a name and money of its own. @returns what was wrong with them, in sentences */
  protected async recallWords(demo: boolean): Promise<readonly string[]> {
    this.shop = (await this.kept.setting(SHOP)) ?? (demo ? INVENTED.shop : null);
    this.currency = (await this.kept.setting(CURRENCY)) ?? (demo ? INVENTED.currency : "");
    const { changes, faults } = readRuleChanges(await this.kept.setting(RULE_CHANGES_SETTING));
    this.rule_changes = changes;
    const kept = await this.kept.setting(BENCH_RATES_SETTING), read = readBenchRates(kept);
    this.bench_rates = demo && kept === null ? INVENTED_RATES : read.rates;
    const groups = readHandGroups(await this.kept.setting(HAND_GROUPS_SETTING)), orders = readOrderMarks(await this.kept.setting(ORDER_MARKS_SETTING));
    this.hand_groups = groups.groups;
    this.order_marks = orders.marks;
    const carriage = readFreeFrom(await this.kept.setting(FREE_FROM_SETTING));
    this.free_from = carriage.free_from;
    const grade = readFailureGrade(await this.kept.setting(FAILURE_GRADE));
    const levels = readServiceLevels(await this.kept.setting(SERVICE_LEVELS_SETTING)), written = readWriting(await this.kept.setting(WRITING_SETTING));
    this.service_levels = levels.levels;
    this.way_of_writing = written.locale;
    const others = readElsewhere(await this.kept.setting(ELSEWHERE_SETTING));
    this.elsewhere = others.elsewhere;
    return [...grade.faults, ...others.faults, ...faults, ...read.faults, ...groups.faults, ...orders.faults, ...carriage.faults, ...levels.faults, ...written.faults];
  }

  /** @throws {RangeError} if a rate is negative or beyond belief; then nothing is changed */
  async keepBenchRates(rates: BenchRates): Promise<void> {
    const seen = this.bench_rates;
    this.bench_rates = readBenchRates(await this.kept.changeSetting(BENCH_RATES_SETTING, (kept) =>
      benchRatesText(kept === null ? rates : valuesTogether(seen, rates, readBenchRates(kept).rates)))).rates;
  }

  /** @param elsewhere null takes the other shops out again */
  async keepElsewhere(elsewhere: Elsewhere | null): Promise<void> {
    await this.kept.keepSetting(ELSEWHERE_SETTING, elsewhere && elsewhereText(elsewhere));
    this.elsewhere = elsewhere;
  }

  async keepShop(name: string): Promise<void> {
    await this.kept.keepSetting(SHOP, name.trim() || null);
    this.shop = name.trim() || null;
  }

  async keepCurrency(word: string): Promise<void> {
    await this.kept.keepSetting(CURRENCY, word.trim() || null);
    this.currency = word.trim();
  }

  /** @param locale null for the browser's own way; @throws {RangeError} if it is no locale */
  async keepWriting(locale: string | null): Promise<void> {
    const known = locale === null ? null : Intl.getCanonicalLocales(locale)[0] ?? null;
    await this.kept.keepSetting(WRITING_SETTING, known);
    this.way_of_writing = known;
  }

  /** @throws {RangeError} unless each lies between 0.5 and 0.999; then nothing is changed */
  async keepServiceLevels(levels: ServiceLevels): Promise<void> {
    const seen = this.service_levels;
    this.service_levels = readServiceLevels(await this.kept.changeSetting(SERVICE_LEVELS_SETTING, (kept) =>
      serviceLevelsText(valuesTogether(seen, levels, readServiceLevels(kept).levels)))).levels;
  }

  /** @throws {RangeError} if a change has no real day or no words; then nothing is changed */
  async keepRuleChanges(changes: readonly RuleChange[], seen = this.rule_changes): Promise<void> {
    const plain = (list: readonly RuleChange[]) => readRuleChanges(ruleChangesText(list)).changes, [from, wanted] = [plain(seen), plain(changes)];
    this.rule_changes = readRuleChanges(await this.kept.changeSetting(RULE_CHANGES_SETTING, (kept) => {
      const all = listTogether(from, wanted, readRuleChanges(kept).changes);
      return all.length === 0 ? null : ruleChangesText(all);
    })).changes;
  }

  /** @throws {RangeError} if one names no part, no pieces, or days that cannot be; then nothing is changed */
  async keepOrderMarks(marks: readonly OrderMark[], seen = this.order_marks): Promise<void> {
    const plain = (list: readonly OrderMark[]) => readOrderMarks(orderMarksText(list)).marks, [from, wanted] = [plain(seen), plain(marks)];
    this.order_marks = readOrderMarks(await this.kept.changeSetting(ORDER_MARKS_SETTING, (kept) => {
      const all = listTogether(from, wanted, readOrderMarks(kept).marks);
      return all.length === 0 ? null : orderMarksText(all);
    })).marks;
  }

  /** @param value null where the supplier never sends free; @throws {RangeError} if it is not above 0 */
  async keepFreeFrom(supplier: string, value: number | null): Promise<void> {
    this.free_from = readFreeFrom(await this.kept.changeSetting(FREE_FROM_SETTING, (kept) => {
      const others = Object.entries(readFreeFrom(kept).free_from).filter(([one]) => one !== supplier), all = value === null ? others : [...others, [supplier, value] as const];
      return all.length === 0 ? null : freeFromText(Object.fromEntries(all));
    })).free_from;
  }
}
