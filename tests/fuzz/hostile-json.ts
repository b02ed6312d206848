import fc from "fast-check";

/** Names that mean something to the language: whoever looks a word up in a plain object finds these without anybody having put them there. */
export const LANGUAGE_NAMES = ["__proto__", "constructor", "toString", "valueOf", "hasOwnProperty", "prototype", "toJSON", "__defineGetter__", "length"] as const;

const FIELDS = [
  "from", "to", "who", "text", "position", "name", "people", "hours_a_week", "hour_price", "hour_cost", "beside_min", "part_no", "part_nos", "supplier", "qty", "ordered_on", "arrived_on",
  "seen", "on_hand", "on_order", "kind", "size", "spelling", "reel_kind", "mode", "action", "ignored", "maker", "model", "decided_on", "ticket_no", "verdict", "row_key", "others",
  "spans", "since", "version", "sheets", "sheet", "columns", "column", "means", "values", "word", "ours", "constants", "value", "dates", "year", "A", "B", "C",
];
const VALUES = [
  "null", "true", "false", "0", "-0", "1", "-1", "0.5", "1e308", "1e999", "-1e999", "168", "2026", "[]", "{}", '""', '"   "', '"2026-02-03"', '"2026-02-30"', '"+010000-01-01"', '"-000001-01-01"', '"join"', '"split"', '"size"',
  '"rotor"', '"fly"', '"jobs"', '"P-1"', '"counts"', '"=1+1"', '"<img src=x onerror=alert(1)>"', '"\\u0000"', '"\\ud800"', '"two\\nlines"', `"${"long ".repeat(60)}"`,
];

/** JSON texts that come near to what is kept: its fields with any values, names of the language among both, and lists of them. */
export const hostileJson: fc.Arbitrary<string> = fc.letrec<{ value: string; object: string; list: string }>((tie) => ({
  value: fc.oneof({ depthSize: "small", withCrossShrink: true }, { weight: 6, arbitrary: fc.constantFrom(...VALUES, ...LANGUAGE_NAMES.map((name) => JSON.stringify(name))) }, { weight: 2, arbitrary: tie("object") }, { weight: 1, arbitrary: tie("list") }),
  object: fc.array(fc.tuple(fc.oneof({ weight: 6, arbitrary: fc.constantFrom(...FIELDS) }, { weight: 1, arbitrary: fc.constantFrom(...LANGUAGE_NAMES) }), tie("value")), { maxLength: 8 })
    .map((entries) => `{${entries.map(([name, value]) => `${JSON.stringify(name)}:${value}`).join()}}`),
  list: fc.array(tie("value"), { maxLength: 4 }).map((values) => `[${values.join()}]`),
})).value;
