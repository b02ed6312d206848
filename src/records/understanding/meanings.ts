import { table } from "../columns.ts";
import { position, positionNamed } from "../vocabulary.ts";
import type { SheetKind } from "./answers.ts";

/** What a column can be taken for. */
export interface Meaning {
  /** One of our columns, or a word of ours for a column that has to be taken apart; goes into `ColumnAnswer.means`. */
  readonly key: string;
  /** What the owner reads in the list. */
  readonly words: string;
  /** Several columns may have it. */
  readonly many: boolean;
}

const one = (key: string, words: string): Meaning => ({ key, words, many: false });
const many = (key: string, words: string): Meaning => ({ key, words, many: true });
const columnsOf = (name: string, left: readonly string[]) =>
  table(name).columns.filter(({ name: column, made }) => !made && !left.includes(column)).map(({ name: column, meaning }) => one(column, meaning));

const JOBS: readonly Meaning[] = [
  one("reel", "maker and model in one, perhaps several reels"),
  ...columnsOf("tickets", ["labour_min", "complaint", "note"]),
  one("labour_min", "time at the bench, in minutes"),
  one("labour_hours", "time at the bench, in hours"),
  one("labour_time", "time at the bench, minutes or hours as it comes"),
  many("complaint", "what the customer says"),
  many("work_text", "work done, in words; findings are read from it"),
  many("parts_text", "parts fitted, in words; findings are read from it"),
  many("complaint_work_text", "what was said and what was done in one cell; findings are read from it"),
  many("checked_text", "parts looked at, in words; findings are read from it"),
  many("note", "remarks, kept as they are"),
  one("salt_flag", "yes for salt water, no for fresh"),
  many("customer", "the customer: left out, only “3 of 6” of a club is kept"),
  one("owner", "the owner: a tag without the name is kept, which links the visits of one reel"),
];
const TILL: readonly Meaning[] = [
  one("document", "number of the bill"), one("received_on", "day of the sale"), one("ticket_no", "the job it belongs to"), one("part_no", "catalogue number"),
  one("description", "what was sold"), one("qty", "pieces"), one("net", "amount of the line"), one("technician", "who served"),
];
const STOCK: readonly Meaning[] = [
  one("size_or_model", "size, or the reel it is for"),
  ...columnsOf("parts", []),
];

/** Three slots of fault and work stand side by side in old programs (`FIND1`, `ACT1`). */
const SLOT = /^(fault|action)_slot_([1-9])$/, PART = /^part:(.+)$/;

/** What a column of such a sheet can be taken for, in the order of the list on the screen. */
export function meaningsFor(kind: SheetKind): readonly Meaning[] {
  return kind === "jobs" ? JOBS : kind === "till" ? TILL : kind === "stock" ? STOCK : [];
}

/** A meaning by its key, also those that are made for a file: a numbered slot, a column of one part. */
export function meaningNamed(key: string, kind: SheetKind): Meaning | null {
  const listed = meaningsFor(kind).find((meaning) => meaning.key === key);
  if (listed) return listed;
  const slot = SLOT.exec(key), part = PART.exec(key)?.[1];
  if (slot) return one(key, slot[1] === "fault" ? `finding ${slot[2]}: part and fault` : `finding ${slot[2]}: what was done`);
  return part !== undefined && positionNamed(part) === part ? many(key, `pieces of ${position(part).name.toLowerCase()}`) : null;
}

export const slotOf = (key: string): { what: "fault" | "action"; nth: number } | null => {
  const found = SLOT.exec(key);
  return found ? { what: found[1] as "fault" | "action", nth: Number(found[2]) } : null;
};
/** The position a column of one part stands for. */
export const partColumn = (key: string): string | null => PART.exec(key)?.[1] ?? null;
