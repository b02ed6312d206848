import { hashOf, queryOf, text } from "./url-state.ts";

/** What a number was counted of, as the address of the Records room carries it. */
export const BEHIND_FIELDS = { position: text(), part: text(), job: text(), kind: text(), maker: text(), model: text() };

/**
 * Where the rows behind a number are listed, each with its file and line.
 *
 * @example
 * rowsBehindLink({ job: "drag", kind: "fly" }) // => "#/records?job=drag&kind=fly"
 */
export function rowsBehindLink(of: Partial<Record<keyof typeof BEHIND_FIELDS, string | null>>): string {
  const values = Object.fromEntries(Object.keys(BEHIND_FIELDS).map((name) => [name, of[name as keyof typeof BEHIND_FIELDS] ?? ""]));
  return hashOf({ slug: "records", query: queryOf(BEHIND_FIELDS, values as Record<keyof typeof BEHIND_FIELDS, string>) });
}
