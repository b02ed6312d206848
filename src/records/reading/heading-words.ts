import { TABLES } from "../columns.ts";
import type { TableName } from "../columns.ts";

/** How a cell of a foreign column is turned into ours before it is checked. */
export type Convert = "hours to minutes" | "failed to grade";

export interface HeadingWord {
  readonly column: string;
  readonly convert: Convert | null;
}

const TICKET = "ticket; ticket no; ticket number; job no; job number; repair no; repair number; tkt";
const PART_NO = "part no; part number; sku; catalogue number; catalog number";
const QTY = "quantity; pcs; pieces";
const MODEL = { maker: "make; brand; manufacturer", model: "reel model; model name" };
const REEL_KIND = "kind; type; typ; reel type; kind of reel";
const PRICE = "cost; price; unit price";
const NOTE = "notes; remark; remarks; comment; comments";
const LEAD = { lead_days: "lead time; lead time days" };

/** Plain words for our columns, beside the columns' own names; separated by `;`, in the form of `plainHeading`. */
const WORDS: Record<TableName, Record<string, string>> = {
  tickets: {
    ticket_no: TICKET,
    received_on: "date in; in; received; recd; date received; received date; intake date; date",
    finished_on: "date out; out; done; finished; date done; date finished; completed",
    ...MODEL,
    reel_kind: REEL_KIND,
    serial: "serial no; serial number; ser; s n; owner s tag",
    water: "water type; wtr",
    salt_days: "exposure days; days in salt; salt water days; saltwater days",
    use_days: "days used; days fished; days in use",
    months_since_service: "months; months since last service",
    rinse: "rinsed; rinses",
    came_in: "why it came in; reason in",
    job: "job type; job kind; kind of job; type of job",
    complaint: "fault; problem; customer says; symptom",
    technician: "tech; done by",
    labour_min: "mins; minutes; labour minutes; labor minutes; labor min; labour mins; bench minutes",
    "labour_min from hours": "labour hours; labor hours; hours; hrs; bench hours; labour hrs",
    parts_wait_days: "wait days; days waited; parts wait",
    warranty: "guarantee; wty",
    outcome: "result; status",
    labour_charge: "labour cost; labor cost; labor charge",
    parts_charge: "parts cost; parts price",
    note: NOTE,
  },
  findings: {
    ticket_no: TICKET,
    position: "part; component; place; part position",
    part_no: PART_NO,
    mode: "what is wrong; finding; failure mode",
    grade: "condition; wear grade",
    "grade from failed": "failed; has failed; failure",
    action: "work; work done; what was done",
    routine: "as routine; preventive",
    qty: QTY,
    unit_cost: PRICE,
    minutes: "mins",
    note: NOTE,
  },
  models: {
    ...MODEL,
    reel_kind: REEL_KIND,
    sealed: "sealed body",
    tier: "price class",
    new_price: "price; price new; price when new",
    discontinued_on: "discontinued",
  },
  parts: {
    part_no: PART_NO,
    name: "part name; description",
    supplier: "vendor",
    unit_cost: PRICE,
    pack_qty: "pack; pack size",
    min_order_qty: "moq; minimum order; min order",
    ...LEAD,
    on_hand: "stock; in stock; qty on hand; quantity on hand",
    on_order: "ordered; under way",
    due_on: "due; eta; due date",
    replaces: "supersedes; old part no; old part number",
  },
  fits: { ...MODEL, position: "part; component; place; part position", part_no: PART_NO, qty: QTY },
  suppliers: {
    supplier: "vendor; supplier name; name",
    order_cost: "carriage; postage; cost of an order",
    min_order_value: "minimum order; min order",
    ...LEAD,
    review_days: "days between orders",
  },
  orders: {
    order_no: "order; po; po number; order number",
    supplier: "vendor; supplier name",
    part_no: PART_NO,
    qty: QTY,
    ordered_on: "ordered; order date; date ordered; date",
    arrived_on: "arrived; received; date received; date arrived; delivered",
    unit_cost: PRICE,
  },
};

/**
 * The form in which headings are compared: lower case, every run of other signs one blank.
 *
 * @example
 * plainHeading(" Ticket_No. ") // => "ticket no"
 */
export function plainHeading(heading: string): string {
  return heading.normalize("NFKC").toLowerCase().replace(/#/g, " no ").replace(/[^\p{L}\p{N}]+/gu, " ").trim();
}

function wordOf(entry: string): HeadingWord {
  const [column = entry, from] = entry.split(" from ");
  return { column, convert: from === "hours" ? "hours to minutes" : from === "failed" ? "failed to grade" : null };
}

/** For each table, what a plain heading stands for; the columns' own names come before other words. */
export const HEADING_WORDS: ReadonlyMap<TableName, ReadonlyMap<string, HeadingWord>> = new Map(TABLES.map(({ name, columns }) => [
  name,
  new Map([
    ...Object.entries(WORDS[name]).flatMap(([entry, words]) => words.split("; ").map((word) => [word, wordOf(entry)] as const)),
    ...columns.map((column) => [plainHeading(column.name), { column: column.name, convert: null }] as const),
  ]),
]));
