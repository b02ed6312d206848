import { hashOf, placeOf, queryOf, valuesOf, type Fields, type Place, type Values } from "./url-state.ts";

/** Where the reader is, as the address bar says; the only place that touches it. */
class Address {
  place = $state.raw<Place>({ slug: "", query: "" });

  /** Starts following the address bar; returns the way to stop. */
  follow(): () => void {
    const read = () => (this.place = placeOf(location.hash));
    read();
    addEventListener("hashchange", read);
    return () => removeEventListener("hashchange", read);
  }

  /** Goes to a room; `query` may carry filters for it. */
  go(slug: string, query = ""): void {
    location.hash = hashOf({ slug, query });
  }

  /** Changes the filters of the room without a new step in the browser's history. */
  refine(query: string): void {
    if (query === this.place.query) return;
    this.place = { slug: this.place.slug, query };
    history.replaceState(history.state, "", hashOf(this.place));
  }
}

export const address = new Address();

/**
 * Filters of one room, kept in the address.
 *
 *     const filters = new Filters(() => ({ kind: oneOf(["", ...REEL_KINDS], ""), model: text(models) }));
 *     filters.values.kind            // "" when nothing is chosen
 *     filters.set({ kind: "fly" })
 */
export class Filters<F extends Fields> {
  readonly #fields: () => F;
  readonly #read = $derived.by(() => valuesOf(this.#fields(), address.place.query));

  constructor(fields: () => F) {
    this.#fields = fields;
  }

  get values(): Values<F> {
    return this.#read.values;
  }

  /** Words of the address that mean nothing here. */
  get ignored(): readonly string[] {
    return this.#read.ignored;
  }

  get any(): boolean {
    return queryOf(this.#fields(), this.values) !== "";
  }

  set(change: Partial<Values<F>>): void {
    address.refine(queryOf(this.#fields(), { ...this.values, ...change }));
  }

  clear(): void {
    address.refine("");
  }
}
