import { filterValues } from "../filter.ts";
import type { FailureFilter } from "./failure-rate.ts";

/** Shares are shown from this many inspected on; under it the count is all there is to say. */
export const FEWEST_FOR_SHARE = 10;

/** The filter as the parameters the statements of this folder share. */
export function failureValues(filter: FailureFilter) {
  const { opening, denominator, group, position } = filter;
  return { ...filterValues(filter), opening, denominator, group_code: group, position };
}

/** The same part of the same reel failed again within so many days of the job that put it right: a comeback. */
export const COMEBACK_DAYS = 90;
