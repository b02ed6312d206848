import type { SheetKind } from "../../records/understanding/answers.ts";

/** What a sheet can be taken for, in the owner's words. */
export const SHEET_KINDS: readonly { readonly value: SheetKind; readonly label: string }[] = [
  { value: "jobs", label: "jobs, one row a reel" },
  { value: "till", label: "sales of a till, one line an item" },
  { value: "stock", label: "a stock list, one row a part" },
  { value: "table", label: "one of our own tables" },
  { value: "left out", label: "left out" },
];
