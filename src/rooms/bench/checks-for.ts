import { CHECKS } from "../../records/bench-log/fields.ts";

/** Checks that mean nothing on some kinds of reel. */
const ONLY: Readonly<Record<string, readonly string[]>> = { check_free_spool: ["conventional", "baitcaster"], check_bail: ["spinning"] };

/** The check values to write for a kind of reel; all of them while it is not known. */
export const checksFor = (reel_kind: string | null): readonly (typeof CHECKS)[number][] =>
  CHECKS.filter(({ field }) => reel_kind === null || reel_kind === "other" || (ONLY[field]?.includes(reel_kind) ?? true));
