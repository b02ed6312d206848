const DASH = /^(?:as\s*568\s*[a-b]?)?\s*[-−–]?\s*(\d{3})$/i;
const METRIC = /^(\d+(?:[.,]\d+)?)\s*[x×*]\s*(\d+(?:[.,]\d+)?)(?:\s*mm)?$/i;

/**
 * A written O-ring size in one form: `AS568-014`, or `inside x section` in mm; null for anything else.
 *
 * A dash size and a metric size are never called equal, however near (12.42x1.78 is not 12.5x1.5). Where the two metric
 * numbers stand the other way round, the smaller is the section.
 *
 * @example
 * oRingSize("1.5x9.5") // => "9.5x1.5"
 */
export function oRingSize(text: string): string | null {
  const dash = DASH.exec(text.trim());
  if (dash) return `AS568-${dash[1] ?? ""}`;
  const metric = METRIC.exec(text.trim());
  if (!metric) return null;
  const [one, other] = metric.slice(1, 3).map((number) => Number(number.replace(",", "."))) as [number, number];
  return one > 0 && other > 0 ? `${Math.max(one, other)}x${Math.min(one, other)}` : null;
}
