/** How one filter is read from the address. */
export type Field =
  | { readonly kind: "word"; readonly words: readonly string[]; readonly otherwise: string }
  | { readonly kind: "text"; readonly known?: readonly string[] }
  | { readonly kind: "date" };
export type Fields = Readonly<Record<string, Field>>;

/** Every field has a value; "" is no filter. */
export type Values<F extends Fields> = { readonly [K in keyof F]: string };

export interface Place {
  readonly slug: string;
  readonly query: string;
}

/** One of a few words; the address leaves out the one it is `otherwise`. */
export const oneOf = (words: readonly string[], otherwise: string): Field => ({ kind: "word", words, otherwise });
/** Any short text, or one of the `known` when given. */
export const text = (known?: readonly string[]): Field => ({ kind: "text", ...(known && { known }) });
/** A day as `YYYY-MM-DD`, of a year that days can be counted on from. */
export const day = (): Field => ({ kind: "date" });

const LONGEST = 200;
const otherwise = (field: Field): string => (field.kind === "word" ? field.otherwise : "");

function isDay(value: string): boolean {
  const time = /^[12]\d{3}-\d{2}-\d{2}$/.test(value) ? Date.parse(`${value}T00:00:00Z`) : NaN;
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(value);
}

function allowed(field: Field, value: string): boolean {
  if (field.kind === "word") return field.words.includes(value);
  if (field.kind === "date") return isDay(value);
  return value !== "" && value.length <= LONGEST && (field.known?.includes(value) ?? true);
}

/**
 * Room and filters an address names after its `#`.
 *
 * @example
 * placeOf("#/failures?model=Withy+5"); // => { slug: "failures", query: "model=Withy+5" }
 */
export function placeOf(hash: string): Place {
  const [path = "", query = ""] = hash.replace(/^#?\/?/, "").split(/\?(.*)/s);
  return { slug: path, query };
}

/** The other way round; `slug` and `query` as `placeOf` gives them. */
export const hashOf = (place: Place): string => `#/${place.slug}${place.query === "" ? "" : `?${place.query}`}`;

/**
 * Values of the filters an address carries. What it carries and we do not know, or do not understand, is named in
 * `ignored` and changes nothing.
 */
export function valuesOf<F extends Fields>(fields: F, query: string): { values: Values<F>; ignored: readonly string[] } {
  const values = new Map(Object.entries(fields).map(([name, field]) => [name, otherwise(field)]));
  const ignored: string[] = [];
  for (const [name, value] of new URLSearchParams(query)) {
    const field = Object.hasOwn(fields, name) ? fields[name] : undefined;
    if (field && allowed(field, value)) values.set(name, value);
    else ignored.push(`${name}=${value}`.slice(0, 60));
  }
  return { values: Object.fromEntries(values) as Values<F>, ignored };
}

/** The query that names these values, shortest form, in the order of the fields. */
export function queryOf<F extends Fields>(fields: F, values: Values<F>): string {
  const query = new URLSearchParams();
  for (const [name, field] of Object.entries(fields)) {
    const value = values[name];
    if (value !== undefined && value !== otherwise(field) && allowed(field, value)) query.set(name, value);
  }
  return query.toString();
}
