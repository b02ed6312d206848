import { modelName } from "../../answers/model-name.ts";
import type { Clock, Life, Limits, ModelLife, Sensitivity, Wear, WearEffect, WearRow } from "../../answers/wear/wear.ts";
import { count, DASH, FEWEST_FOR_PERCENT, number, percent } from "../../ui/format.ts";
import { UNITS } from "./wear-filters.ts";

/**
 * An exposure without its unit: whole from ten on, else one decimal.
 *
 * @example
 * exposure(34.2, "en-GB"); // => "34"
 * exposure(6.25, "en-GB"); // => "6.3"
 */
export const exposure = (value: number | null, locale?: string): string => number(value, value !== null && Math.abs(value) < 10 ? 1 : 0, locale);

/** An exposure with its unit. */
export const withUnit = (value: number | null, clock: Clock, locale?: string): string => `${exposure(value, locale)}\u00a0${UNITS[clock].many}`;

/** Where a figure plausibly lies, in words; "" where nothing is known. An end beyond the records is left open. */
export function likelyRange({ low, high }: Pick<Limits, "low" | "high">, locale?: string): string {
  if (low === null && high === null) return "";
  if (high === null) return `${exposure(low, locale)} or more`;
  return low === null ? `${exposure(high, locale)} or less` : `${exposure(low, locale)} to ${exposure(high, locale)}`;
}

/** A life in a cell: the figure, or why there is none. */
export function lifeText(life: Life, locale?: string): string {
  if (life.value !== null) return exposure(life.value, locale);
  if (life.beyond) return life.low === null ? "beyond the records" : `over ${exposure(life.low, locale)}`;
  return DASH;
}

const SHARES: readonly (readonly ["b10" | "b20" | "b50", string])[] = [["b10", "1 in 10 has"], ["b20", "1 in 5 has"], ["b50", "half have"]];
const followed = (row: WearRow, locale?: string) => row.method === "spells"
  ? `${count(row.n, "part", "parts", locale)} followed from fitting, ${number(row.failed, 0, locale)} failed`
  : `${count(row.n, "inspection", "inspections", locale)}, each for itself, ${number(row.failed, 0, locale)} failed`;
const capital = (text: string) => text.replace(/^./, (letter) => letter.toUpperCase());

/** The figures of a curve, soonest first. */
function lives(row: WearRow, locale?: string): string {
  const known = SHARES.filter(([key]) => row[key].value !== null).map(([key, said], at) => {
    const range = likelyRange(row[key], locale);
    return `${said} failed by ${at === 0 ? withUnit(row[key].value, row.clock, locale) : exposure(row[key].value, locale)}${range ? ` (likely ${range})` : ""}`;
  });
  return known.length > 0 ? `${known.join(", ")}. ` : "";
}

/** What is known when fewer than one in ten had failed at the longest exposure seen. */
const beyond = (row: WearRow, locale?: string): string => row.longest === null ? "Where 1 in 10 has failed lies beyond the records. "
  : `Where 1 in 10 has failed lies beyond the records, which reach ${withUnit(row.longest, row.clock, locale)}${row.b10.low === null ? "" : `; likely not before ${exposure(row.b10.low, locale)}`}. `;

/** The least or most that can be said without a curve. */
function bound({ b10_bound: { low, high }, clock }: WearRow, locale?: string): string {
  if (low !== null) return `Even so, 1 in 10 has likely not failed before ${withUnit(low, clock, locale)}. `;
  return high !== null ? `1 in 10 has likely failed by ${withUnit(high, clock, locale)}. ` : "";
}

/** One position in words: how long it lasts with its range and counts, or why that cannot be said. */
export function wearSentence(row: WearRow, locale?: string): string {
  const curve = row.b10.beyond ? beyond(row, locale) : lives(row, locale);
  const why = row.status_text === "" ? "" : `${capital(row.status_text.replace(/\.?$/, "."))} `;
  const counts = row.n === 0 ? "" : `${capital(followed(row, locale))}.`;
  return `${capital(curve)}${why}${curve === "" ? bound(row, locale) : ""}${counts}`.trim();
}

/** A level of a condition as one says it behind "one day". */
function levelWords(condition: string, level: string): string {
  if (condition === "rinse") return `${level} rinsed`;
  return condition === "water" ? `in ${level} water` : `at “${level}”`;
}

/** How a condition changes life, from its days at the reference that wear as much as one day at it. */
export function effectSentence({ condition, time_ratio: { value, low, high }, ...of }: WearEffect, clock: Clock, locale?: string): string {
  const [one, many] = clock === "months" ? ["month", "months"] : ["day", "days"];
  const level = levelWords(condition, of.level), reference = levelWords(condition, of.reference);
  if (value === null) return `${capital(level)} against ${reference}: too little to say.`;
  const range = low === null || high === null ? "" : ` (likely ${number(low, 1, locale)} to ${number(high, 1, locale)})`;
  const told = low !== null && high !== null && (low > 1 || high < 1) ? "" : " That could be chance.";
  return `One ${one} ${level} wears like ${number(value, 1, locale)} ${many} ${reference}${range}.${told}`;
}

const beyondChance = ({ life_ratio: { low, high } }: ModelLife) => low !== null && high !== null && (low > 1 || high < 1);

/** Whether models differ by more than chance, in one sentence. */
export function modelsSentence(models: readonly ModelLife[]): string {
  const apart = models.filter(beyondChance);
  if (apart.length === 0) return "No difference between models that the records can show: whatever differs here could be chance.";
  const names = (some: readonly ModelLife[]) => some.map(modelName).join(", "), shorter = apart.filter(({ life_ratio }) => (life_ratio.high ?? 1) < 1), longer = apart.filter((one) => !shorter.includes(one));
  return [shorter.length > 0 ? `It lasts less long on ${names(shorter)}.` : "", longer.length > 0 ? `It lasts longer on ${names(longer)}.` : "", "The other differences could be chance."].filter((part) => part !== "").join(" ");
}

/** The same figure under another assumption, beside the one shown. */
export function sensitivitySentence(one: Sensitivity, shown: WearRow, locale?: string): string {
  const range = likelyRange(one.b10, locale), figure = lifeText(one.b10, locale);
  const instead = shown.b10.value === null ? "" : ` instead of ${exposure(shown.b10.value, locale)}`;
  if (one.n === 0) return `${capital(one.assumption)}: then no part is left to count.`;
  const said = figure === DASH ? "where 1 in 10 has failed cannot be said" : `1 in 10 failed by ${figure}${instead} ${UNITS[shown.clock].many}${range ? ` (likely ${range})` : ""}`;
  return `${capital(one.assumption)}: ${said}; ${number(one.failed, 0, locale)} of ${number(one.n, 0, locale)} failed.${one.note ? ` ${one.note}` : ""}`;
}

/** How much of the records could be followed from visit to visit. */
export function linkedSentence({ linked_share, rows }: Wear, locale?: string): string {
  const most = Math.max(0, ...rows.map((row) => row.n));
  if (linked_share === null || most < FEWEST_FOR_PERCENT) return "Too few visits to say how many belong to a reel known by serial or tag.";
  const rest = linked_share < 1 ? " The others are taken each for itself, which says less." : "";
  const share = linked_share === 1 ? "All" : linked_share >= 0.995 ? "Nearly all" : percent(linked_share, locale);
  return `${share} of the visits belong to a reel known by serial number or tag, and can be followed from visit to visit.${rest}`;
}

/** What was left out of one position's figures, one sentence each. */
export function leftOut(row: WearRow, locale?: string): readonly string[] {
  const said = (n: number, words: string) => (n === 0 ? [] : [`${number(n, 0, locale)} ${words}`]);
  return [
    ...said(row.clock_missing, `left out because no ${UNITS[row.clock].many} are written on the ticket.`),
    ...said(row.failed_without_exposure, `found failed with no ${UNITS[row.clock].many} since last good: age or a bad part, kept out of the curve.`),
    ...said(row.chosen_by_fault, "first looked at when the reel came in with something wrong: the fault chose them, so they are left out."),
    ...said(row.unlinked, "of these could not be followed, as the reel has no serial number or tag."),
  ];
}

export const WEAR_CAUTIONS: readonly string[] = [
  "These are reels that came in here, not reels sold; reels that never break are seen less.",
  "Salt days are the customer's guess. Guesses blur the curve: the true difference is likely larger than shown.",
  "A part changed as routine has not failed; it counts as good until then. Rinsed and unrinsed reels may differ in other ways too: this shows what goes together, and promises nothing.",
];
