import { pieces, price } from "../wording.ts";

/** One catalogue row of an interchange group. */
export type ShelfRow = {
  readonly part_no: string;
  readonly interchange: string;
  readonly refused: string | null;
  readonly name: string | null;
  readonly family: string | null;
  readonly material: string | null;
  readonly supplier: string | null;
  readonly unit_cost: number | null;
  readonly pack_qty: number | null;
  readonly min_order_qty: number | null;
  readonly on_hand: number | null;
  readonly on_order: number | null;
  readonly due_on: string | null;
  readonly essential: boolean | null;
  /** Of the places it sits at, the one that holds a job up most: `A`, `B` or `C`. */
  readonly criticality: string | null;
  readonly replaces: string | null;
  readonly lead_days: number | null;
  readonly lead_days_sd: number | null;
  readonly review_days: number | null;
  readonly order_cost: number | null;
  readonly min_order_value: number | null;
  /** As the parts list says; `on_hand` and `on_order` may have marked orders in them. */
  readonly listed_on_hand: number | null;
  readonly listed_on_order: number | null;
};

const cost = (row: ShelfRow) => row.unit_cost ?? Infinity;

/**
 * The row to order: the cheapest piece that no newer number replaces; the lower number among equals.
 *
 * @param ended numbers that a newer one replaces
 */
export function chosenPart(rows: readonly ShelfRow[], ended: ReadonlySet<string>): ShelfRow | null {
  const open = rows.filter((row) => !ended.has(row.part_no));
  return [...(open.length > 0 ? open : rows)].sort((a, b) => (cost(a) === cost(b) ? (a.part_no < b.part_no ? -1 : 1) : cost(a) - cost(b)))[0] ?? null;
}

/** Why this row of the group, and what to look at before ordering. */
export function choiceNotes(rows: readonly ShelfRow[], chosen: ShelfRow, ended: ReadonlySet<string>): string[] {
  const old = rows.filter((row) => ended.has(row.part_no) && row !== chosen);
  const others = rows.filter((row) => !ended.has(row.part_no) && row !== chosen);
  const materials = new Set(rows.flatMap((row) => (row.material === null ? [] : [row.material.toLowerCase()])));
  const dearer = others.map((row) => (row.unit_cost === null ? `${row.part_no} without a price` : `${row.part_no} at ${price(row.unit_cost)}`));
  const notes: string[] = [];
  if (others.length > 0 && chosen.unit_cost !== null) {
    notes.push(`${chosen.part_no} at ${price(chosen.unit_cost)} a piece is the cheapest of ${pieces(others.length + 1, "number")} for the same part (${dearer.join(", ")}).`);
  }
  if (others.length > 0 && chosen.unit_cost === null) notes.push(`The same part has ${pieces(others.length + 1, "number")} and no price: ${chosen.part_no} is the first by number.`);
  if (old.length > 0) notes.push(`The shelf also counts older numbers: ${old.map((row) => row.part_no).join(", ")}.`);
  if (materials.size > 1) notes.push(`Not all of the same material (${[...materials].sort().join(", ")}): check before ordering.`);
  return notes;
}
