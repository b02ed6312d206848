type FreeFrom = Readonly<Record<string, number>>;

/** Name of the ledger's setting that keeps from which order value on each supplier sends free of carriage, as JSON. */
export const FREE_FROM_SETTING = "carriage free from";

/** The values as they were kept; what is no sum of money is left out and named. */
export function readFreeFrom(kept: string | null): { free_from: FreeFrom; faults: readonly string[] } {
  if (kept === null || kept === "") return { free_from: {}, faults: [] };
  let found: unknown;
  try {
    found = JSON.parse(kept);
  } catch {
    return { free_from: {}, faults: [`From what value carriage is free cannot be read: what is kept is damaged.`] };
  }
  if (typeof found !== "object" || found === null || Array.isArray(found)) return { free_from: {}, faults: ["From what value carriage is free cannot be read: it is not a list of suppliers."] };
  const good = (value: unknown): value is number => typeof value === "number" && value > 0 && value < Infinity;
  return {
    free_from: Object.fromEntries(Object.entries(found).filter((one): one is [string, number] => good(one[1]))),
    faults: Object.entries(found).flatMap(([supplier, value]) => (good(value) ? [] : [`The value from which ${supplier} sends free was left out: it is no sum of money.`])),
  };
}

/** The value from which one supplier sends free; null where the owner wrote none. Suppliers may bear any name, those of the language too. */
export const freeFrom = (free_from: FreeFrom, supplier: string): number | null => (Object.hasOwn(free_from, supplier) ? free_from[supplier] ?? null : null);

/** @throws {RangeError} if a value is not above 0 */
export function freeFromText(free_from: FreeFrom): string {
  const wrong = Object.entries(free_from).find(([, value]) => !(value > 0 && value < Infinity));
  if (wrong) throw new RangeError(`freeFromText: ${wrong[0]} must send free from a value above 0, got ${wrong[1]}`);
  return JSON.stringify(free_from);
}
