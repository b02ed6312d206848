import { day, hashOf, oneOf, queryOf, text, type Values } from "./url-state.ts";

/** What a number counts and under which filter, as the address of the Records room carries it; `of` is "" while no number is asked about. */
export const BEHIND_FIELDS = {
  of: oneOf(["", "inspections", "comebacks", "parts", "pieces", "jobs", "reels"], ""),
  position: text(), part: text(), job: text(), kind: text(), maker: text(), model: text(), water: text(), from: day(), to: day(),
  opening: oneOf(["both", "planned", "complaint"], "both"),
  counted: oneOf(["opened", "written"], "opened"),
  clock: oneOf(["salt_days", "use_days", "months"], "salt_days"),
};
export type BehindValues = Values<typeof BEHIND_FIELDS>;

const NONE = Object.fromEntries(Object.entries(BEHIND_FIELDS).map(([name, field]) => [name, field.kind === "word" ? field.otherwise : ""])) as BehindValues;

/**
 * Where the rows behind a number are listed, each with its file and line. Give the filter of the number whole, or the list counts otherwise.
 *
 * @example
 * rowsBehindLink({ of: "jobs", job: "drag, fly", from: "2025-01-01" }) // => "#/records?of=jobs&job=drag%2C+fly&from=2025-01-01"
 */
export function rowsBehindLink(asked: { readonly [K in keyof BehindValues]?: string | null }): string {
  const values = Object.fromEntries(Object.entries(NONE).map(([name, none]) => [name, asked[name as keyof BehindValues] ?? none]));
  return hashOf({ slug: "records", query: queryOf(BEHIND_FIELDS, values as BehindValues) });
}
