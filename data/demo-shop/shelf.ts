import { iso, openFrom, parts, weekday } from "./days.ts";
import type { Day } from "./days.ts";
import type { Draws } from "./random.ts";
import { SUPPLIERS } from "./settings.ts";
import type { StockLine, Supplier } from "./settings.ts";
import type { World } from "./truths.ts";

export interface Shipment { line: StockLine; supplier: Supplier; qty: number; promised: number; ordered: Day; arrives: Day }
interface Shelf { line: StockLine; supplier: Supplier; on_hand: number; reorder: number; up_to: number; coming: Shipment[] }

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
/** Days between the owner's looks at the shelf, and how generously the quoted days are taken. */
const REVIEW_DAYS = 14, CARE = 1.35;
/** Of an assorted box, the chance that the right one of the assortment is in it. */
const RIGHT_ONE = 0.85, RIGHT_GEAR = 0.3;

const assorted = (line: StockLine) => line.part_no.endsWith("-MIX");
const gears = (line: StockLine) => line.family === "gear";

function ordersOn(supplier: Supplier, day: Day): boolean {
  const { date } = parts(day);
  return supplier.order_days.some((when) => (when === "1st" ? date === 1 : when === "15th" ? date === 15 : when === WEEKDAYS[weekday(day)]));
}

/** The shelf as the owner kept it: a look on each order day, a reorder point taken from last year's use and the quoted days. */
export class Stockroom {
  readonly shipments: Shipment[] = [];
  private readonly shelves = new Map<string, Shelf>();
  private readonly leads = new Map<string, Day>();

  constructor(lines: readonly StockLine[], private today: Day, private readonly world: World, private readonly draw: Draws) {
    for (const line of lines) {
      const supplier = SUPPLIERS.find((one) => one.code === line.supplier);
      if (!supplier) throw new RangeError(`Stockroom: no supplier ${line.supplier}`);
      const daily = (line.use_per_year ?? 0) / 365, need = Math.ceil(daily * (supplier.quoted_days + REVIEW_DAYS) * CARE * (line.unit_cost < 1 ? 2.5 : 1));
      // The import house is ordered from nearly every month; gears are bought when a reel needs them.
      const up_to = supplier.code === "FLI" ? need + 5 : need + Math.max(1, Math.ceil(daily * 60));
      const reorder = gears(line) ? 0 : supplier.code === "FLI" ? up_to - 3 : need;
      const on_hand = line.use_per_year === null ? 0 : Math.max(up_to, line.on_hand);
      this.shelves.set(line.part_no, { line, supplier, on_hand, reorder, up_to, coming: [] });
    }
  }

  /** Lets the days pass: goods arrive, order days come. Days already past stay as they are. */
  passTo(day: Day): void {
    while (this.today < day) {
      this.today++;
      for (const shelf of this.shelves.values()) this.receive(shelf);
      for (const supplier of SUPPLIERS) if (ordersOn(supplier, this.today)) this.review(supplier);
    }
  }

  /** Takes pieces off the shelf now, or gives null and takes none. */
  take(line: StockLine, qty: number): boolean {
    const shelf = this.shelf(line);
    if (shelf.on_hand < qty || (assorted(line) && !this.draw.chance(gears(line) ? RIGHT_GEAR : RIGHT_ONE))) return false;
    shelf.on_hand -= qty;
    return true;
  }

  /** The day the pieces a reel waits for arrive: out of goods under way, or ordered on the next order day. */
  waitFor(line: StockLine, qty: number): Day {
    const shelf = this.shelf(line);
    const under_way = shelf.coming.find((shipment) => !assorted(line) && shipment.qty - shipment.promised >= qty);
    const shipment = under_way ?? this.order(shelf, this.nextOrderDay(shelf.supplier), qty);
    shipment.promised += qty;
    return openFrom(shipment.arrives);
  }

  private shelf(line: StockLine): Shelf {
    const shelf = this.shelves.get(line.part_no);
    if (!shelf) throw new RangeError(`Stockroom: no line ${line.part_no}`);
    return shelf;
  }

  private receive(shelf: Shelf): void {
    for (const shipment of shelf.coming) if (shipment.arrives === this.today) shelf.on_hand += shipment.qty - shipment.promised;
    if (shelf.coming.length > 0) shelf.coming = shelf.coming.filter((shipment) => shipment.arrives > this.today);
  }

  private review(supplier: Supplier): void {
    const low = [...this.shelves.values()].filter((shelf) => shelf.supplier === supplier && shelf.line.use_per_year !== null)
      .map((shelf) => ({ shelf, have: shelf.on_hand + shelf.coming.reduce((sum, shipment) => sum + shipment.qty - shipment.promised, 0) }))
      .filter(({ shelf, have }) => have <= shelf.reorder && have < shelf.up_to);
    const value = low.reduce((sum, { shelf, have }) => sum + (shelf.up_to - have) * shelf.line.unit_cost, 0);
    // The import house's minimum would allow four orders a year; the owner orders monthly and pays its small-order fee.
    const urgent = supplier.code === "FLI" || low.some(({ have }) => have <= 0) || this.leads.has(`${supplier.code} ${this.today}`);
    if (value >= supplier.min_order_value || urgent) for (const { shelf, have } of low) this.order(shelf, this.today, shelf.up_to - have);
  }

  private order(shelf: Shelf, ordered: Day, qty: number): Shipment {
    const { line, supplier } = shelf, packs = Math.ceil(Math.max(qty, line.min_order_qty) / line.pack_qty) * line.pack_qty;
    const shipment: Shipment = { line, supplier, qty: packs, promised: 0, ordered, arrives: this.arrival(supplier, ordered) };
    shelf.coming.push(shipment);
    this.shipments.push(shipment);
    return shipment;
  }

  /** One order, one parcel: all lines ordered of a supplier on a day arrive together. */
  private arrival(supplier: Supplier, ordered: Day): Day {
    const key = `${supplier.code} ${ordered}`, known = this.leads.get(key);
    if (known !== undefined) return known;
    const mean = this.world.late_suppliers ? supplier.actual_mean_days : supplier.quoted_days;
    const varies = supplier.actual_sd_days / supplier.actual_mean_days, spread = Math.log(1 + varies * varies);
    const day = ordered + Math.max(1, Math.round(this.draw.logNormal(mean * Math.exp(-spread / 2), Math.sqrt(spread))));
    this.leads.set(key, day);
    return day;
  }

  private nextOrderDay(supplier: Supplier): Day {
    for (let day = this.today + 1; day < this.today + 62; day++) if (ordersOn(supplier, day)) return day;
    throw new RangeError(`Stockroom: ${supplier.code} takes no orders after ${iso(this.today)}`);
  }
}
