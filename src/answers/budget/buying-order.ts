import type { Ladder } from "./ladder.ts";
import { fill, Missing } from "./missing.ts";
import type { Together } from "./missing.ts";
import type { Needs } from "./needs.ts";
import { bestAlone, bestTogether, better } from "./purchase.ts";
import type { Purchase } from "./purchase.ts";

/** Remembers the best purchase of every group and every set until something about it changes. */
class Offers {
  readonly missing: Missing;
  readonly bought: Int32Array;
  readonly #ladders: readonly Ladder[];
  readonly #alone: (Purchase | null | undefined)[];
  readonly #together = new Map<Together, Purchase | null>();
  readonly #changed = new Set<number>();

  constructor(needs: Needs, ladders: readonly Ladder[]) {
    this.#ladders = ladders;
    this.bought = new Int32Array(ladders.length);
    this.#alone = ladders.map(() => undefined);
    this.missing = new Missing(ladders.length, (group) => this.#changed.add(group));
    fill(this.missing, needs, ladders);
  }

  #forgetChanged(): void {
    for (const group of this.#changed) {
      this.#alone[group] = undefined;
      for (const set of this.missing.setsOf(group)) this.#together.delete(set);
    }
    this.#changed.clear();
  }

  /** Most jobs per money of all that can be bought now; null when nothing helps any job. */
  best(): Purchase | null {
    this.#forgetChanged();
    let best: Purchase | null = null;
    this.#alone.forEach((known, group) => {
      const offer = known === undefined ? bestAlone(group, this.bought[group] as number, this.missing, this.#ladders[group] as Ladder) : known;
      this.#alone[group] = offer;
      best = better(best, offer);
    });
    for (const set of this.missing.together.values()) {
      const known = this.#together.get(set), offer = known === undefined ? bestTogether(set, this.bought, this.missing, this.#ladders) : known;
      this.#together.set(set, offer);
      best = better(best, offer);
    }
    return best;
  }

  take({ groups, to }: Purchase): void {
    groups.forEach((group, i) => {
      this.bought[group] = to[i] as number;
      this.missing.bought(group, to[i] as number);
    });
  }
}

/**
 * What to buy first, second, third …: at every step what spares most jobs the wait for each unit of money.
 *
 * A step is one group, as many packs at once as pay best, or the whole set of parts that some jobs lack: a job waits for
 * its last missing part, and parts that help only together would never be chosen one at a time. Where every job lacks one
 * part only, each step's spend is spent as well as it can be (marginal analysis, Fox 1966, Management Science 13:210);
 * where jobs lack several, no rule of this kind has a bound, and the gap is measured (`tests/answers/budget-optimum.test.ts`).
 *
 * @param pause called after every step with the jobs still waiting; to give others a turn, and to stop
 */
export async function buyingOrder(needs: Needs, ladders: readonly Ladder[], pause: (step: number) => Promise<void> | void = () => undefined): Promise<Purchase[]> {
  const offers = new Offers(needs, ladders), order: Purchase[] = [];
  for (;;) {
    const purchase = offers.best();
    if (purchase === null) return order;
    offers.take(purchase);
    order.push(purchase);
    await pause(order.length);
  }
}
