import type { Engine } from "../../db/engine.ts";
import rows from "./rows-behind.sql?raw";
import ofNumber from "./rows-behind-number.sql?raw";

/** One imported row behind a ticket. */
export interface RowBehind {
  readonly kind: "ticket" | "finding";
  /** Of a finding. */
  readonly position: string | null;
  readonly import_no: number;
  readonly source_file: string;
  /** Line of that file, from 1 with the heading. */
  readonly source_line: number;
  /** False where another row of the ticket counts in its place. */
  readonly counts: boolean;
}

/** Which rows of which files made a ticket and its findings, for the owner who asks where a number comes from. */
export async function rowsBehind(engine: Engine, ticket_no: string, signal?: AbortSignal): Promise<readonly RowBehind[]> {
  return engine.rows<RowBehind>(rows, { ticket_no }, signal);
}

/** What a number on a screen was counted of; null asks for all. With a place or a part its findings are meant, else tickets. */
export interface NumberAsked {
  readonly position: string | null;
  /** A part's number, or the name of those that are the same thing. */
  readonly part: string | null;
  readonly job: string | null;
  readonly reel_kind: string | null;
  readonly maker: string | null;
  readonly model: string | null;
}

/** One row that a number was counted from. */
export interface RowCounted {
  readonly ticket_no: string;
  readonly received_on: string;
  readonly maker: string | null;
  readonly model: string;
  readonly job: string | null;
  /** Of a finding, as are the next four. */
  readonly position: string | null;
  readonly action: string | null;
  readonly grade: number | null;
  readonly part_no: string | null;
  readonly qty: number | null;
  /** Of a ticket. */
  readonly labour_min: number | null;
  readonly import_no: number;
  readonly source_file: string;
  readonly source_line: number;
}

/** Which rows of which files a number was counted from, the newest first. */
export async function rowsBehindNumber(engine: Engine, asked: NumberAsked, signal?: AbortSignal): Promise<readonly RowCounted[]> {
  return engine.rows<RowCounted>(ofNumber, { ...asked }, signal);
}
