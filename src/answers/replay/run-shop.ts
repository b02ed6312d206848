import { roundedOrder } from "../../stats/order-quantity.ts";
import { grouped } from "../grouped.ts";
import { filledUp, valueOf } from "./fill-up.ts";
import type { Filler, Goods } from "./fill-up.ts";
import { Shelf } from "./shelf.ts";
import type { OnBench } from "./shelf.ts";
import type { DeliveryDays, Ordering, Outcome, ReplayGroup, ReplayJob, Rule, World } from "./world.ts";

interface Books { orders: number; spend: number; carriage: number }

/** Everything on its way, by the day it comes. */
class UnderWay {
  readonly #by_day = new Map<number, Goods[]>();

  add(day: number, goods: Goods): void {
    const same = this.#by_day.get(day);
    if (same) same.push(goods);
    else this.#by_day.set(day, [goods]);
  }

  on(day: number): readonly Goods[] {
    return this.#by_day.get(day) ?? [];
  }
}

/** What the rule would order from one supplier today. */
function wanted(day: number, groups: readonly number[], rule: Rule, shelf: Shelf, world: World): Goods[] {
  return groups.flatMap((group) => {
    const level = rule(day, group), position = shelf.position(group), terms = world.groups[group];
    if (level === null || terms === undefined || position > level.at) return [];
    const pieces = roundedOrder(level.to - position, terms.pack_qty, terms.min_order_qty);
    return pieces > 0 ? [{ group, pieces }] : [];
  });
}

/** A shop that orders by one rule, day after day. */
class Shop {
  readonly shelf: Shelf;
  readonly bench: OnBench[] = [];
  readonly books: Books = { orders: 0, spend: 0, carriage: 0 };
  readonly #world: World;
  readonly #coming = new UnderWay();
  readonly #of_supplier: readonly (readonly number[])[];

  constructor(world: World) {
    this.#world = world;
    this.shelf = new Shelf(world.groups);
    this.#of_supplier = world.suppliers.map(({ supplier }) => world.groups.flatMap((group, at) => (group.supplier === supplier ? [at] : [])));
    for (const { day, group, pieces } of world.coming) this.#order(day, { group, pieces });
  }

  #order(arrives_on: number, goods: Goods): void {
    this.shelf.order(goods.group, goods.pieces);
    this.#coming.add(arrives_on, goods);
  }

  goodsIn(day: number): void {
    for (const { group, pieces } of this.#coming.on(day)) this.shelf.arrive(group, pieces, day);
  }

  jobIn({ day, counts, parts }: ReplayJob): void {
    const job: OnBench = { day, counts, lacks: 0, ready_on: null };
    for (const [group, pieces] of parts) this.shelf.take(job, group, pieces);
    if (job.lacks === 0) job.ready_on = day;
    this.bench.push(job);
  }

  ordersOut(day: number, { rule, use }: Ordering, delivery: DeliveryDays): void {
    const { first, groups, suppliers } = this.#world;
    suppliers.forEach((terms, at) => {
      const own = this.#of_supplier[at] ?? [], asked = (day - first) % terms.review_days === 0 ? wanted(day, own, rule, this.shelf, this.#world) : [];
      if (asked.length === 0) return;
      const goods = filledUp(asked, terms.min_order_value ?? 0, this.#fillers(own, asked, (group) => use(day, group)), groups);
      this.books.orders += 1;
      this.books.spend += valueOf(goods, groups);
      this.books.carriage += terms.order_cost ?? 0;
      for (const one of goods) this.#order(day + delivery(at, day), one);
    });
  }

  #fillers(own: readonly number[], asked: readonly Goods[], use: (group: number) => number): Filler[] {
    const added = new Map(asked.map(({ group, pieces }) => [group, pieces]));
    return own.map((group) => ({ group, terms: this.#world.groups[group] as ReplayGroup, position: this.shelf.position(group) + (added.get(group) ?? 0), use: use(group) }))
      .filter(({ use }) => use > 0);
  }
}

/**
 * Walks through the past day by day: goods come, jobs take parts, and on a supplier's order day the rule says what to order.
 *
 * An order under the supplier's smallest value is filled up with what would run out next, whatever the rule.
 *
 * @returns what came of it; the same world, rule and delivery days give the same
 */
export function runShop(world: World, ordering: Ordering, delivery: DeliveryDays): Outcome {
  const { first, last } = world, shop = new Shop(world), jobs = grouped(world.jobs, ({ day }) => day);
  let value = 0;
  for (let day = first; day <= last; day += 1) {
    shop.goodsIn(day);
    for (const job of jobs.get(day) ?? []) shop.jobIn(job);
    shop.ordersOut(day, ordering, delivery);
    value += shop.shelf.value;
  }
  return { ...waits(shop.bench, last), ...shop.books, stock_value_mean: value / (last - first + 1), ...piecesOf(shop.shelf) };
}

function waits(bench: readonly OnBench[], last: number): Pick<Outcome, "jobs" | "waited" | "wait_days" | "never_came"> {
  const counted = bench.filter(({ counts }) => counts), waited = counted.filter(({ day, ready_on }) => ready_on !== day);
  return {
    jobs: counted.length, waited: waited.length, wait_days: waited.reduce((sum, { day, ready_on }) => sum + (ready_on ?? last) - day, 0),
    never_came: waited.filter(({ ready_on }) => ready_on === null).length,
  };
}

const piecesOf = ({ on_hand, on_order, ordered, arrived, handed_out }: Shelf): Pick<Outcome, "on_hand" | "on_order" | "ordered" | "arrived" | "handed_out"> =>
  ({ on_hand: [...on_hand], on_order: [...on_order], ordered: [...ordered], arrived: [...arrived], handed_out: [...handed_out] });
