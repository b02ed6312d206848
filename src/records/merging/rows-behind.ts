import type { Engine } from "../../db/engine.ts";
import rows from "./rows-behind.sql?raw";

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
