import type { Engine, Row } from "../../db/engine.ts";
import { derive, deriveFirst } from "../../db/prepare.ts";
import { rowsStream } from "../../db/rows-stream.ts";
import type { Ledger } from "../ledger/ledger.ts";
import { MERGED_BY_ITSELF, NAMES_DECIDED, TICKETS_DECIDED, ticketDecisions } from "./decisions.ts";
import type { TicketDecision } from "./decisions.ts";
import forget from "./forget-decisions.sql?raw";
import { names } from "./names.ts";

/** The name of the ledger's setting that holds the grade from which a position counts as failed. */
export const FAILURE_GRADE = "failure_grade";

const GRADES = ["1", "2", "3", "4"];

/** The shop's own failure grade; null for the usual one. A kept text that is no grade is named, and the usual one holds. */
export function readFailureGrade(kept: string | null): { readonly grade: number | null; readonly faults: readonly string[] } {
  if (kept === null || GRADES.includes(kept)) return { grade: kept === null ? null : Number(kept), faults: [] };
  return { grade: null, faults: ["The grade from which a part counts as failed cannot be read, so the usual one holds: 3."] };
}

/** The texts of all settings that `putTogether` goes by: while they are as they were, nothing has to be put together anew. */
export async function decidedText(ledger: Ledger): Promise<string> {
  return JSON.stringify(await Promise.all([NAMES_DECIDED, TICKETS_DECIDED, MERGED_BY_ITSELF, FAILURE_GRADE].map((name) => ledger.setting(name))));
}

const NAMES = { maker: "varchar", model: "varchar", to_maker: "varchar", to_model: "varchar" } as const;
const TICKETS = { ticket_no: "varchar", row_key: "varchar", verdict: "varchar" } as const;

/** A decision as the engine takes it: one word for each row. */
function rowsOf({ ticket_no, verdict, row_key, others }: TicketDecision): Row[] {
  const other = verdict === "two jobs" ? "own job" : "left";
  return [{ ticket_no, row_key, verdict: verdict === "two jobs" ? "counts" : verdict }, ...others.map((key) => ({ ticket_no, row_key: key, verdict: other }))];
}

/**
 * Derives everything from the imported rows as the owner decided: names that are one reel, tickets that were settled, the
 * grade that counts as failed. All or nothing.
 *
 * @param how "first" puts off what the orders of the day do not need (`deriveFirst`)
 */
export async function putTogether(engine: Engine, ledger: Ledger, how: "whole" | "first" = "whole"): Promise<void> {
  await engine.transaction(async (inside) => {
    await inside.run([forget]);
    const { merged } = await names(inside, ledger), decided = (await ticketDecisions(ledger)).flatMap(rowsOf);
    const named = merged.map(({ from, to }) => ({ maker: from.maker, model: from.model, to_maker: to.maker, to_model: to.model }));
    if (named.length > 0) await inside.load("decided.names", rowsStream(NAMES, named), named.length);
    if (decided.length > 0) await inside.load("decided.tickets", rowsStream(TICKETS, decided), decided.length);
    const { grade } = readFailureGrade(await ledger.setting(FAILURE_GRADE));
    await (how === "first" ? deriveFirst : derive)(inside, grade === null ? undefined : { failure_grade: grade });
  });
}
