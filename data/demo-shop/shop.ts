import { work } from "./bench.ts";
import type { Bench, Opening } from "./bench.ts";
import { modelPlans, stockLines } from "./catalogue.ts";
import type { ModelPlan } from "./catalogue.ts";
import { closed, dayOf, daysIn, openFrom, weekday } from "./days.ts";
import type { Day } from "./days.ts";
import { extras, minutesOf, outcomeOf, technician } from "./desk.ts";
import type { Outcome, Technician } from "./desk.ts";
import { FIRST_YEAR, fleet } from "./fleet.ts";
import type { Reel } from "./fleet.ts";
import { call, dunk, fish, gradeOf } from "./living.ts";
import type { Call } from "./living.ts";
import { draws } from "./random.ts";
import type { Draws } from "./random.ts";
import type { StockLine } from "./settings.ts";
import { Stockroom } from "./shelf.ts";
import type { Shipment } from "./shelf.ts";
import { worldWithout } from "./truths.ts";
import type { World } from "./truths.ts";

/** One reel on the bench once, as it truly was. */
export interface Visit {
  reel: Reel; source: Call["source"]; job: Call["job"]; place: number | null; grade: number | null;
  received: Day; started: Day | null; finished: Day | null; wait_days: number | null; batch: string | null;
  salt_days: number; use_days: number; months: number; /** never on a bench before */ first: boolean; comeback: boolean; warranty: boolean;
  technician: Technician; minutes: number | null; openings: Opening[]; extras: Opening[]; outcome: Outcome;
}
/** The shop's true past: what the records are written from, and what they can be checked against. */
export interface Past { world: World; lines: StockLine[]; plans: ModelPlan[]; reels: Reel[]; visits: Visit[]; shipments: Shipment[] }

export const RECORDED_FROM = dayOf(2023, 1, 1), AS_OF = dayOf(2026, 1, 5);
const RECORDED_MONTH = (2023 - FIRST_YEAR) * 12, LAST_MONTH = (2026 - FIRST_YEAR) * 12;
const ARRIVES = [0, 0.22, 0.16, 0.15, 0.15, 0.18, 0.14];
const HOURS_A_DAY = 6, HANDLING_MIN = 17;

interface Arrival { reel: Reel; call: Call; received: Day; batch: string | null; month: number }

class Shop {
  readonly visits: Visit[] = [];
  private bench_day: Day = RECORDED_FROM;
  private bench_hours = 0;

  constructor(private readonly bench: Bench, private readonly desk: Draws, private readonly lines: readonly StockLine[]) {}

  /** Before the records begin: the reel is seen to, nothing is written. */
  unseen({ reel, call: why, received, month }: Arrival): void {
    work(reel, why, received, { ...this.bench, stock: null });
    this.leaves(reel, why, month, received);
  }

  serve(arrival: Arrival): void {
    const { reel, call: why, received, month } = arrival, { stock } = this.bench;
    const grade = why.place === null ? null : why.place < 0 ? 3 : gradeOf(reel, why.place);
    const waited = reel.last_finished > RECORDED_FROM ? Math.round((received - reel.last_finished) / 30.44) : month - reel.last_visit_month;
    const visit: Visit = {
      reel, source: why.source, job: why.job, place: why.place, grade, received, started: null, finished: null, wait_days: null, batch: arrival.batch,
      salt_days: reel.salt_days, use_days: reel.use_days, months: waited, first: reel.last_finished === -Infinity, comeback: why.source === "complaint" && reel.last_finished > 0 && month - reel.last_visit_month <= 3,
      warranty: why.source === "complaint" && month - reel.bought_month < 36 && this.desk.chance(0.75),
      technician: technician(reel.plan, why.job, this.desk), minutes: null, openings: [], extras: [], outcome: "waiting",
    };
    this.visits.push(visit);
    const start = Math.max(openFrom(received + 1 + this.desk.below(3)), this.bench_day);
    if (start > AS_OF) return;
    visit.started = start;
    stock?.passTo(start);
    visit.openings = work(reel, why, start, this.bench);
    visit.extras = extras(reel.plan, why.job, this.lines, this.bench);
    this.finish(visit, start, month);
  }

  private finish(visit: Visit, start: Day, month: number): void {
    const minutes = minutesOf(visit, this.bench.world, this.desk), done = this.passHours(start, (minutes + HANDLING_MIN) / 60);
    const missing = visit.openings.flatMap((opening) => opening.wait_until ?? []), parts_in = Math.max(start, ...missing);
    const finished = parts_in > start ? openFrom(parts_in + 1) : done;
    this.leaves(visit.reel, visit, month, finished);
    if (finished > AS_OF) return;
    Object.assign(visit, { minutes, finished, wait_days: parts_in - start, outcome: outcomeOf(visit, this.desk) });
    if (visit.outcome === "abandoned" || visit.outcome === "beyond repair") visit.reel.gone = true;
  }

  /** First come, first served: the day the bench is through with these hours. */
  private passHours(start: Day, hours: number): Day {
    if (start > this.bench_day) this.bench_hours = 0;
    this.bench_day = start;
    this.bench_hours += hours;
    while (this.bench_hours > HOURS_A_DAY) {
      this.bench_hours -= HOURS_A_DAY;
      this.bench_day = openFrom(this.bench_day + 1);
    }
    return this.bench_day;
  }

  private leaves(reel: Reel, why: Pick<Call, "job">, month: number, finished: Day): void {
    if (why.job === "DUNK") dunk(reel);
    reel.salt_days = reel.use_days = 0;
    reel.last_visit_month = month;
    reel.last_finished = finished;
  }
}

/** The open days of a month, and how many of a hundred reels come on each. */
function openDays(year: number, month0: number): { days: Day[]; weights: number[] } {
  const first = dayOf(year, month0 + 1, 1), days = Array.from({ length: daysIn(year, month0 + 1) }, (_, i) => first + i).filter((day) => !closed(day));
  return { days, weights: days.map((day) => ARRIVES[weekday(day)] ?? 0) };
}

/** Reels that charters and clubs have booked for the same month come together. */
function together(arrivals: Arrival[], year: number, month0: number): void {
  const homes = new Map<string, Arrival[]>();
  for (const arrival of arrivals) {
    const { reel } = arrival, home = `${reel.owner}-${reel.household}`;
    if (reel.owner !== "private" && arrival.call.source === "planned") homes.set(home, [...(homes.get(home) ?? []), arrival]);
  }
  for (const [home, group] of homes) {
    const first = group.find((arrival) => arrival.received > arrival.reel.last_finished);
    if (group.length < 2 || !first) continue;
    const day = Math.max(...group.map((arrival) => arrival.reel.last_finished + 1), first.received);
    const batch = `${home.replace("charter-", "CH").replace("club-", "CL")}-${year % 100}${String(month0 + 1).padStart(2, "0")}`;
    if (day < dayOf(year, month0 + 1, 1) + daysIn(year, month0 + 1)) for (const arrival of group) Object.assign(arrival, { received: openFrom(day), batch });
  }
}

function month(index: number, reels: readonly Reel[], shop: Shop, world: World, life: Draws, calendar: Draws): void {
  const year = FIRST_YEAR + Math.floor(index / 12), month0 = index % 12, open = openDays(year, month0), arrivals: Arrival[] = [];
  const homes = { private: [0], charter: Array.from({ length: 16 }, () => life.uniform()), club: Array.from({ length: 20 }, () => life.uniform()) };
  for (const reel of reels) {
    if (reel.gone || reel.bought_month > index) continue;
    const home = homes[reel.owner][reel.household] ?? 0, why = call(reel, fish(reel, index, world, life), index, home, world, life);
    if (!why) continue;
    const received = openFrom(Math.max(calendar.weighted(open.days, open.weights), reel.last_finished + 1 + calendar.below(4)));
    if (received < dayOf(year, month0 + 2, 1)) arrivals.push({ reel, call: why, received, batch: null, month: index });
  }
  if (index < RECORDED_MONTH) return arrivals.forEach((arrival) => shop.unseen(arrival));
  together(arrivals, year, month0);
  const turn = ({ reel, received }: Arrival) => received - (reel.owner === "charter" ? 5 : 0);
  arrivals.sort((a, b) => turn(a) - turn(b) || a.reel.no - b.reel.no).forEach((arrival) => shop.serve(arrival));
}

/** Lives every reel of the fleet month by month from 2015 to 2025 and keeps what came to the bench from 2023 on. */
export function past(seed: number, without: readonly string[] | "all"): Past {
  const world = worldWithout(without), lines = stockLines(world), plans = modelPlans(lines, world);
  const reels = fleet(plans, world, draws(seed, "fleet")), stock = new Stockroom(lines, RECORDED_FROM, world, draws(seed, "stock"));
  const shop = new Shop({ world, draw: draws(seed, "bench"), stock }, draws(seed, "desk"), lines);
  const life = draws(seed, "life"), calendar = draws(seed, "calendar");
  for (let index = 0; index < LAST_MONTH; index++) month(index, reels, shop, world, life, calendar);
  stock.passTo(AS_OF);
  return { world, lines, plans, reels, visits: shop.visits, shipments: stock.shipments };
}
