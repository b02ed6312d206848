import { date } from "./format.ts";

/**
 * What stands beside a date field: once there is a day, which day it is, in the shop's way of writing. The field's own order of
 * day and month follows the language of the browser's windows, which no page can ask for, so it is never named.
 *
 * @example
 * typedDay(""); // => "order as shown"
 */
export const typedDay = (value: string): string => (value === "" ? "order as shown" : date(value));
