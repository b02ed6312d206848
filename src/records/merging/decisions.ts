import type { Ledger } from "../ledger/ledger.ts";
import type { Confidence, WrittenModel } from "./propose-merges.ts";

/** Two names are one reel (`to`), or a name stays itself whatever it looks like (`to` null). */
export interface NameDecision {
  readonly from: WrittenModel;
  readonly to: WrittenModel | null;
  /** `YYYY-MM-DD` */
  readonly decided_on: string;
}

/** `counts`: as this row says; `fills`: the same, its blanks filled from the other rows; `two jobs`: each row is a job of its own. */
export type Verdict = "counts" | "fills" | "two jobs";

/** What was decided of the rows that bear one ticket number. */
export interface TicketDecision {
  readonly ticket_no: string;
  readonly verdict: Verdict;
  /** The row that counts; of two jobs the one that keeps the number. */
  readonly row_key: string;
  /** The other rows it was held against; a row that comes later is asked about anew. */
  readonly others: readonly string[];
  /** `YYYY-MM-DD` */
  readonly decided_on: string;
}

/** Settings of the ledger; they go into the backup with all others. */
export const NAMES_DECIDED = "names decided", TICKETS_DECIDED = "tickets decided";

/** The setting that says how sure a merge must be to be made without the owner; `sure` where nothing is set. */
export const MERGED_BY_ITSELF = "names merged by themselves";

/** Decisions are the owner's work: a text that cannot be read is left alone and counts as none. */
function listed(text: string | null): readonly unknown[] {
  if (text === null) return [];
  try {
    const json: unknown = JSON.parse(text);
    return Array.isArray(json) ? json : [];
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return [];
  }
}

const isText = (value: unknown): value is string => typeof value === "string";

function isModel(value: unknown): value is WrittenModel {
  const one = value as Partial<WrittenModel> | null;
  return typeof one === "object" && one !== null && isText(one.model) && (one.maker === null || isText(one.maker));
}

function isNameDecision(value: unknown): value is NameDecision {
  const one = value as Partial<NameDecision> | null;
  return typeof one === "object" && one !== null && isModel(one.from) && (one.to === null || isModel(one.to)) && isText(one.decided_on);
}

function isTicketDecision(value: unknown): value is TicketDecision {
  const one = value as Partial<TicketDecision> | null;
  return typeof one === "object" && one !== null && isText(one.ticket_no) && isText(one.row_key) && isText(one.decided_on)
    && ["counts", "fills", "two jobs"].includes(one.verdict ?? "") && Array.isArray(one.others) && one.others.every(isText);
}

const namesIn = (text: string | null): readonly NameDecision[] => listed(text).filter(isNameDecision);
const ticketsIn = (text: string | null): readonly TicketDecision[] => listed(text).filter(isTicketDecision);

export const nameDecisions = async (ledger: Ledger): Promise<readonly NameDecision[]> => namesIn(await ledger.setting(NAMES_DECIDED));

export const ticketDecisions = async (ledger: Ledger): Promise<readonly TicketDecision[]> => ticketsIn(await ledger.setting(TICKETS_DECIDED));

export async function mergedByItself(ledger: Ledger): Promise<Confidence> {
  const level = await ledger.setting(MERGED_BY_ITSELF);
  return level === "likely" || level === "a guess" ? level : "sure";
}

const isSame = (a: WrittenModel, b: WrittenModel) => a.maker === b.maker && a.model === b.model;

const kept = (list: readonly unknown[]) => (list.length === 0 ? null : JSON.stringify(list));

/** Remembers what was decided of a name, in the place of what was decided of it before. */
export async function decideNames(ledger: Ledger, decisions: readonly NameDecision[]): Promise<void> {
  await ledger.changeSetting(NAMES_DECIDED, (text) => kept([...namesIn(text).filter(({ from }) => !decisions.some((one) => isSame(one.from, from))), ...decisions]));
}

/** Forgets what was decided of a name, so that it is proposed again. */
export async function forgetName(ledger: Ledger, from: WrittenModel): Promise<void> {
  await ledger.changeSetting(NAMES_DECIDED, (text) => kept(namesIn(text).filter((one) => !isSame(one.from, from))));
}

/** Remembers how a ticket number was settled, in the place of how it was before. */
export async function decideTicket(ledger: Ledger, decision: TicketDecision): Promise<void> {
  await ledger.changeSetting(TICKETS_DECIDED, (text) => kept([...ticketsIn(text).filter(({ ticket_no }) => ticket_no !== decision.ticket_no), decision]));
}

/** Forgets how a ticket number was settled, so that it is asked again. */
export async function forgetTicket(ledger: Ledger, ticket_no: string): Promise<void> {
  await ledger.changeSetting(TICKETS_DECIDED, (text) => kept(ticketsIn(text).filter((one) => one.ticket_no !== ticket_no)));
}
