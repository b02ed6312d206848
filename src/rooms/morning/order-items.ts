import type { Look, NamedThing } from "../../answers/morning/last-look.ts";
import type { OrderToday, WaitingPart } from "../../answers/morning/order-today.ts";
import type { RestockLine, SupplierSheet } from "../../answers/stock/restock-line.ts";
import type { Restock } from "../../answers/stock/restock.ts";
import { count, date, money, number } from "../../ui/format.ts";
import { neat } from "../../ui/neat.ts";
import { listChanges } from "./change-words.ts";
import { linkTo, type Item, type Part } from "./sheet-part.ts";

/** Suppliers, lines of one of them, and waiting parts named on the sheet. */
const MOST_SUPPLIERS = 5, MOST_LINES = 3, MOST_WAITING = 4;

const nameOf = (line: RestockLine): string => line.name ?? line.part_no ?? line.interchange;

function linesOf({ lines }: SupplierSheet, locale?: string): string {
  const first = [...lines].sort((a, b) => Number(b.waiting > 0) - Number(a.waiting > 0) || (b.cost ?? 0) - (a.cost ?? 0));
  const rest = first.length - MOST_LINES;
  return `${first.slice(0, MOST_LINES).map((line) => `${number(line.order_qty, 0, locale)} × ${nameOf(line)}`).join(", ")}${rest > 0 ? ` and ${count(rest, "other line", "other lines", locale)}` : ""}.`;
}

function supplierItem(sheet: SupplierSheet, currency: string, locale?: string): Item {
  const { supplier, lines, total } = sheet;
  return {
    before: supplier === null ? "No supplier named: " : `${supplier}: `, figure: `${count(lines.length, "line", "lines", locale)}, ${money(total, currency, 0, locale)}`,
    href: linkTo("stock", { show: "order", ...(supplier !== null && { supplier }) }), after: `. ${neat(sheet.joint.sentence)}`, why: linesOf(sheet, locale),
  };
}

/** Parts to order by name, to tell next time what is new. */
export const orderedNames = ({ sheets }: Pick<Restock, "sheets">): NamedThing[] =>
  sheets.flatMap(({ lines }) => lines.map((line) => ({ key: line.interchange, name: nameOf(line) })));

/** What to order today, supplier by supplier: what goes now before what can wait. */
export function orderPart({ restock }: OrderToday, currency: string, before: Look | null, locale?: string): Part {
  const sheets = restock.sheets.filter(({ lines }) => lines.length > 0), first = [...sheets].sort((a, b) => Number(a.joint.decision === "wait") - Number(b.joint.decision === "wait"));
  const rest = sheets.length - MOST_SUPPLIERS, all = `${count(sheets.length, "supplier", "suppliers", locale)}, ${money(restock.total, currency, 0, locale)}`;
  return {
    title: "Order today", to_do: true, items: first.slice(0, MOST_SUPPLIERS).map((sheet) => supplierItem(sheet, currency, locale)),
    nothing: "Nothing to order: every part that is used has enough on the shelf or under way.",
    changed: listChanges(before?.figures.order ?? null, orderedNames(restock), "no longer to order", locale),
    more: { words: sheets.length === 0 ? "The whole shelf, on Stock" : `Every line with its reason, on Stock: ${all}${rest > 0 ? `, ${number(rest, 0, locale)} of them not named here` : ""}`, href: linkTo("stock") },
  };
}

/** What to do about a part that jobs wait for. */
function waitedFor(one: WaitingPart, assorted: boolean, locale?: string): string {
  const there = number(one.on_hand, 0, locale);
  if (assorted) return " waited for: is the right one in the drawer?";
  if (one.on_hand === null) return " waited for; the shelf count is not known.";
  return one.on_hand >= one.pieces ? ` waited for, and ${there} on the shelf: fit them.` : ` waited for, ${there} on the shelf.`;
}

/** Parts that open jobs wait for; null where none does. */
export function waitingPart({ waiting, restock }: OrderToday, locale?: string): Part | null {
  if (waiting.length === 0) return null;
  const assorted = new Set(restock.lines.filter((line) => line.status === "refused").map((line) => line.interchange)), rest = waiting.length - MOST_WAITING;
  return {
    title: "Jobs waiting for parts", to_do: true, changed: "", nothing: "",
    items: waiting.slice(0, MOST_WAITING).map((one) => ({
      before: "", figure: `${number(one.pieces, 0, locale)} × ${one.name ?? one.interchange}`, href: linkTo("stock", { line: one.interchange }),
      after: waitedFor(one, assorted.has(one.interchange), locale), why: "",
    })),
    more: { words: `What is under way, on Stock${rest > 0 ? `: ${count(rest, "more part is", "more parts are", locale)} waited for` : ""}`, href: linkTo("stock") },
  };
}

/** What the sheet is drawn from, for its head. */
export function morningFacts({ span }: Pick<OrderToday, "span">, locale?: string): readonly { label: string; value: string }[] {
  return [
    { label: "Tickets", value: number(span.tickets, 0, locale) },
    { label: "From", value: date(span.from, locale) },
    { label: "To", value: date(span.to, locale) },
    { label: "Not finished", value: number(span.open_tickets, 0, locale) },
  ];
}
