/**
 * Refusals of a caller's mistake, all in one wording: function, what it requires, what it got.
 *
 * Each function returns nothing and throws a RangeError when its requirement does not hold.
 */
const refuse = (caller: string, requirement: string, value: unknown): never => {
  throw new RangeError(`${caller}: ${requirement}, got ${String(value)}`);
};

/**
 * @throws {RangeError} unless `value` is a whole number of at least `lowest`
 * @example
 * requireWhole("shareInterval", "failed", 3); // => undefined
 */
export function requireWhole(caller: string, name: string, value: number, lowest = 0): void {
  if (!Number.isInteger(value) || value < lowest) refuse(caller, `${name} must be a whole number of at least ${lowest}`, value);
}

/**
 * @throws {RangeError} unless `value` is finite and above zero
 * @example
 * requirePositive("rateInterval", "exposure", 0.5); // => undefined
 */
export function requirePositive(caller: string, name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) refuse(caller, `${name} must be a finite number above 0`, value);
}

/**
 * @throws {RangeError} unless `value` is finite and not below zero
 * @example
 * requireNonNegative("demandPmf", "mean", 0); // => undefined
 */
export function requireNonNegative(caller: string, name: string, value: number): void {
  if (!(value >= 0 && value < Infinity)) refuse(caller, `${name} must be a finite number of at least 0`, value);
}

/**
 * @throws {RangeError} unless `value` lies strictly between 0 and 1
 * @example
 * requireInside("shareInterval", "level", 0.95); // => undefined
 */
export function requireInside(caller: string, name: string, value: number): void {
  if (!(value > 0 && value < 1)) refuse(caller, `${name} must lie between 0 and 1, both excluded`, value);
}

/**
 * @throws {RangeError} unless every value is a finite number
 * @example
 * requireFinite("quantile", "values", [2, 4]); // => undefined
 */
export function requireFinite(caller: string, name: string, values: ArrayLike<number>): void {
  for (let at = 0; at < values.length; at += 1) if (!Number.isFinite(values[at])) refuse(caller, `${name} must hold finite numbers only`, values[at]);
}

/**
 * @throws {RangeError} unless both lists have the same length
 * @example
 * requirePaired("fitGammaPrior", "events", [1, 2], "exposures", [10, 20]); // => undefined
 */
export function requirePaired(
  caller: string, first: string, firstList: ArrayLike<unknown>, second: string, secondList: ArrayLike<unknown>,
): void {
  if (firstList.length !== secondList.length) {
    refuse(caller, `${first} and ${second} must be equally long`, `${firstList.length} and ${secondList.length}`);
  }
}

/**
 * @throws {RangeError} if the list is empty
 * @example
 * requireSome("quantile", "values", [1]); // => undefined
 */
export function requireSome(caller: string, name: string, list: ArrayLike<unknown>): void {
  if (list.length === 0) refuse(caller, `${name} must not be empty`, "none");
}

/**
 * @throws {RangeError} unless `inspected` is a whole number of at least 1 and `failed` one in 0…`inspected`
 * @example
 * requireShare("shareInterval", 1, 2); // => undefined
 */
export function requireShare(caller: string, failed: number, inspected: number): void {
  requireWhole(caller, "inspected", inspected, 1);
  if (!Number.isInteger(failed) || failed < 0 || failed > inspected) {
    refuse(caller, `failed must be a whole number in 0…${inspected}`, failed);
  }
}

/**
 * @throws {RangeError} unless all rows are equally long and every count is a whole number of at least 0
 * @example
 * requireTable("fisherExact", [[1, 2], [3, 4]]); // => undefined
 */
export function requireTable(caller: string, table: readonly (readonly number[])[]): void {
  table.flat().forEach((count) => { requireWhole(caller, "table", count); });
  const lengths = table.map((row) => row.length);
  if (new Set(lengths).size > 1) refuse(caller, "table must have rows of one length", lengths.join(", "));
}
