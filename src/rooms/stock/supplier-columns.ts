import { elsewhereWords, type SupplierFacts } from "../../answers/stock/suppliers.ts";
import { date, money, number } from "../../ui/format.ts";
import type { Column } from "../../ui/table-rows.ts";

const right = { align: "right" } as const;

/** What is bought where, and on what terms. */
export const supplierColumns = (currency: string): readonly Column<SupplierFacts>[] => [
  { key: "supplier", label: "Supplier", value: (row) => row.supplier },
  { key: "parts", label: "Numbers", ...right, value: (row) => row.parts },
  { key: "orders", label: "Orders", unit: "last year", spare: true, ...right, value: (row) => row.bought?.orders ?? null, text: (row) => number(row.bought?.orders) },
  { key: "spend", label: "Spent", unit: "last year", ...right, value: (row) => row.bought?.spend ?? null, text: (row) => money(row.bought?.spend, currency, 0) },
  { key: "last_on", label: "Last order", spare: true, value: (row) => row.bought?.last_on ?? null, text: (row) => date(row.bought?.last_on) },
  { key: "four_in_five", label: "Four in five within", unit: "days", ...right, value: (row) => row.four_in_five, text: (row) => number(row.four_in_five) },
  { key: "order_cost", label: "Carriage", ...right, value: (row) => row.order_cost, text: (row) => money(row.order_cost, currency, 0) },
  { key: "min_order_value", label: "Smallest order", ...right, value: (row) => row.min_order_value, text: (row) => money(row.min_order_value, currency, 0) },
  { key: "free_from", label: "Carriage free from", ...right, value: (row) => row.free_from, text: (row) => money(row.free_from, currency, 0) },
];

/** Where else the same parts can be had, each pair once, from the supplier they are listed first. */
export function elsewhereLines(facts: readonly SupplierFacts[]): readonly string[] {
  const told = new Set<string>();
  return facts.flatMap((one) => one.elsewhere.flatMap((other) => {
    const key = [other.here, other.there].sort().join(" ");
    if (told.has(key)) return [];
    told.add(key);
    return [`${other.here} from ${one.supplier}, or ${elsewhereWords(other)}`];
  }));
}

/** A sum cannot be read as written. */
export class NoSum extends Error {
  override readonly name = "NoSum";
}

/** A sum of money as it is written; null for an empty field. @throws {NoSum} with a sentence for the owner */
export function freeValue(written: string): number | null {
  if (written.trim() === "") return null;
  const value = Number(written.trim().replace(",", "."));
  if (!(value > 0 && value < Infinity)) throw new NoSum(`“${written.trim()}” is no sum of money. Write it in digits, or nothing where they never send free.`);
  return value;
}
