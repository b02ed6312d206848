/** How a cell of a column is read and checked. */
export type Kind = "text" | "date" | "number" | "whole" | "yes_no" | "one_of" | "position" | "mode" | "money";

export interface Column {
  readonly name: string;
  readonly kind: Kind;
  readonly required?: true;
  /** Written by the importer alone: not in the templates, and never looked for under other headings. */
  readonly made?: true;
  /** Allowed words of a `one_of` column, as they are stored. */
  readonly words?: readonly string[];
  readonly min?: number;
  readonly max?: number;
  /** The smallest value is itself not allowed. */
  readonly above?: number;
  readonly unit?: string;
  /** What the column means, in the owner's words; shown in templates, mapping and the data dictionary. */
  readonly meaning: string;
}

export interface Table {
  readonly name: TableName;
  readonly columns: readonly Column[];
  /** Columns that name a row; a later row with the same key replaces (`newest`) or contradicts (`conflict`) an earlier one. */
  readonly key: readonly string[];
  readonly same_key: "newest" | "conflict" | "another row";
}

export type TableName = "tickets" | "findings" | "models" | "parts" | "fits" | "suppliers" | "orders";

export const REEL_KINDS = ["spinning", "conventional", "baitcaster", "fly", "other"] as const;
export const JOBS = [
  "full service", "external", "line roller", "drag", "anti-reverse", "bail", "gear", "level wind", "spool and brakes",
  "handle", "reseal", "immersion", "diagnosis", "warranty", "respool", "other",
] as const;
export const ACTIONS = ["left", "cleaned", "lubricated", "adjusted", "replaced", "wanted"] as const;
export const OUTCOMES = ["returned", "beyond repair", "abandoned", "waiting"] as const;
export const FAMILIES = [
  "seal", "ball bearing", "one-way clutch", "bushing", "gear", "spring", "washer or shim", "drag washer", "screw", "shaft",
  "line roller", "knob", "lubricant", "other",
] as const;

export const TABLES: readonly Table[] = [
  {
    name: "tickets",
    key: ["ticket_no"],
    same_key: "conflict",
    columns: [
      { name: "ticket_no", kind: "text", required: true, meaning: "the shop's own job number" },
      { name: "received_on", kind: "date", required: true, meaning: "day the reel came in" },
      { name: "finished_on", kind: "date", meaning: "day the work was done" },
      { name: "maker", kind: "text", meaning: "maker, as the shop writes it" },
      { name: "model", kind: "text", required: true, meaning: "model with its size" },
      { name: "reel_kind", kind: "one_of", words: REEL_KINDS, meaning: "kind of reel" },
      { name: "serial", kind: "text", meaning: "serial number or owner's tag; links visits of one reel; never a name" },
      { name: "water", kind: "one_of", words: ["salt", "brackish", "fresh"], meaning: "water it is fished in" },
      { name: "salt_days", kind: "number", min: 0, max: 3660, unit: "days", meaning: "days in salt or brackish water since the last service" },
      { name: "use_days", kind: "number", min: 0, max: 3660, unit: "days", meaning: "days fished in any water since the last service" },
      { name: "months_since_service", kind: "number", min: 0, max: 900, unit: "months", meaning: "months since the last service, or since new" },
      { name: "rinse", kind: "one_of", words: ["always", "sometimes", "never"], meaning: "rinsed in fresh water after use" },
      { name: "came_in", kind: "one_of", words: ["planned", "complaint", "accident", "immersion"], meaning: "why it came in" },
      { name: "job", kind: "one_of", words: JOBS, meaning: "kind of job; decides which positions were opened" },
      { name: "complaint", kind: "text", meaning: "what the customer says" },
      { name: "technician", kind: "text", meaning: "initials or alias" },
      { name: "batch", kind: "text", meaning: "reels that came together" },
      { name: "labour_min", kind: "number", above: 0, max: 10_000, unit: "minutes", meaning: "minutes at the bench" },
      { name: "parts_wait_days", kind: "number", min: 0, max: 1000, unit: "days", meaning: "days the job waited for parts" },
      { name: "warranty", kind: "yes_no", meaning: "work under warranty" },
      { name: "outcome", kind: "one_of", words: OUTCOMES, meaning: "how it ended" },
      { name: "labour_charge", kind: "money", min: 0, meaning: "charged for labour" },
      { name: "parts_charge", kind: "money", min: 0, meaning: "charged for parts" },
      { name: "note", kind: "text", meaning: "free text" },
    ],
  },
  {
    name: "findings",
    key: ["ticket_no", "position", "part_no", "mode", "grade", "action", "routine", "qty", "unit_cost", "minutes", "note"],
    same_key: "another row",
    columns: [
      { name: "ticket_no", kind: "text", required: true, meaning: "job it was found on" },
      { name: "position", kind: "position", required: true, meaning: "the part's place in the reel" },
      { name: "part_no", kind: "text", meaning: "catalogue number used or wanted" },
      { name: "mode", kind: "mode", meaning: "what is wrong with it" },
      { name: "grade", kind: "whole", min: 0, max: 4, meaning: "0 as new, 1 light, 2 moderate, 3 heavy, 4 failed" },
      { name: "action", kind: "one_of", words: ACTIONS, meaning: "what was done; wanted = needed, not in stock" },
      { name: "routine", kind: "yes_no", meaning: "replaced as a matter of routine" },
      { name: "qty", kind: "whole", min: 1, max: 10_000, unit: "pieces", meaning: "pieces replaced or wanted" },
      { name: "unit_cost", kind: "money", min: 0, meaning: "cost of one piece" },
      { name: "minutes", kind: "number", min: 0, max: 10_000, unit: "minutes", meaning: "minutes for this part" },
      { name: "note", kind: "text", meaning: "free text" },
      { name: "size", kind: "text", made: true, meaning: "size the words name, where no part number stands" },
      { name: "read_from", kind: "text", made: true, meaning: "heading of the text it was read from" },
      { name: "rule", kind: "text", made: true, meaning: "how it was read from the text" },
      { name: "confidence", kind: "number", min: 0, max: 1, made: true, meaning: "share of such readings that are right" },
    ],
  },
  {
    name: "models",
    key: ["maker", "model"],
    same_key: "newest",
    columns: [
      { name: "maker", kind: "text", meaning: "maker" },
      { name: "model", kind: "text", required: true, meaning: "model with its size" },
      { name: "reel_kind", kind: "one_of", words: REEL_KINDS, meaning: "kind of reel" },
      { name: "sealed", kind: "yes_no", meaning: "has a sealed body" },
      { name: "tier", kind: "text", meaning: "price class" },
      { name: "new_price", kind: "money", min: 0, meaning: "price when new" },
      { name: "discontinued_on", kind: "date", meaning: "day the model ended" },
    ],
  },
  {
    name: "parts",
    key: ["part_no"],
    same_key: "newest",
    columns: [
      { name: "part_no", kind: "text", required: true, meaning: "catalogue number" },
      { name: "name", kind: "text", meaning: "what it is" },
      { name: "family", kind: "one_of", words: FAMILIES, meaning: "family of part" },
      { name: "supplier", kind: "text", meaning: "who sells it" },
      { name: "unit_cost", kind: "money", min: 0, meaning: "cost of one piece" },
      { name: "pack_qty", kind: "whole", min: 1, max: 100_000, unit: "pieces", meaning: "pieces in a pack" },
      { name: "min_order_qty", kind: "whole", min: 0, max: 100_000, unit: "pieces", meaning: "fewest pieces the supplier sells" },
      { name: "lead_days", kind: "number", min: 0, max: 1000, unit: "days", meaning: "quoted days from order to arrival" },
      { name: "lead_days_sd", kind: "number", min: 0, max: 1000, unit: "days", meaning: "spread of those days" },
      { name: "on_hand", kind: "number", min: 0, max: 1_000_000, unit: "pieces", meaning: "pieces on the shelf" },
      { name: "on_order", kind: "number", min: 0, max: 1_000_000, unit: "pieces", meaning: "pieces ordered, not yet arrived" },
      { name: "due_on", kind: "date", meaning: "day they are due" },
      { name: "size", kind: "text", meaning: "7x11x3 for a bearing (bore x outside x width, mm); AS568-012 or ID x CS in mm for an O-ring" },
      { name: "material", kind: "text", meaning: "material" },
      { name: "replaces", kind: "text", meaning: "older number it replaces" },
      { name: "essential", kind: "yes_no", meaning: "the job cannot be finished without it" },
    ],
  },
  {
    name: "fits",
    key: ["maker", "model", "position", "part_no"],
    same_key: "newest",
    columns: [
      { name: "maker", kind: "text", meaning: "maker" },
      { name: "model", kind: "text", required: true, meaning: "model with its size" },
      { name: "position", kind: "position", required: true, meaning: "place in the reel" },
      { name: "part_no", kind: "text", meaning: "part that sits there" },
      { name: "qty", kind: "whole", min: 0, max: 1000, unit: "pieces", meaning: "how many; 0 = this model has no such position" },
    ],
  },
  {
    name: "suppliers",
    key: ["supplier"],
    same_key: "newest",
    columns: [
      { name: "supplier", kind: "text", required: true, meaning: "supplier's name or code" },
      { name: "order_cost", kind: "money", min: 0, meaning: "cost of one order, such as carriage" },
      { name: "min_order_value", kind: "money", min: 0, meaning: "smallest order they take" },
      { name: "lead_days", kind: "number", min: 0, max: 1000, unit: "days", meaning: "quoted days from order to arrival" },
      { name: "lead_days_sd", kind: "number", min: 0, max: 1000, unit: "days", meaning: "spread of those days" },
      { name: "review_days", kind: "number", above: 0, max: 366, unit: "days", meaning: "days between your orders" },
    ],
  },
  {
    name: "orders",
    key: ["order_no", "supplier", "part_no", "ordered_on"],
    same_key: "newest",
    columns: [
      { name: "order_no", kind: "text", meaning: "order number" },
      { name: "supplier", kind: "text", required: true, meaning: "supplier's name or code" },
      { name: "part_no", kind: "text", required: true, meaning: "part ordered" },
      { name: "qty", kind: "whole", min: 1, max: 1_000_000, unit: "pieces", meaning: "pieces ordered" },
      { name: "ordered_on", kind: "date", required: true, meaning: "day it was ordered" },
      { name: "arrived_on", kind: "date", meaning: "day it arrived; empty while under way" },
      { name: "unit_cost", kind: "money", min: 0, meaning: "cost of one piece" },
    ],
  },
];

/** @throws {RangeError} when there is no such table */
export function table(name: string): Table {
  const found = TABLES.find((one) => one.name === name);
  if (!found) throw new RangeError(`table: needs one of ${TABLES.map((one) => one.name).join(", ")}, got ${name}`);
  return found;
}
