import type { Batch, Ledger, StoredTable } from "./ledger/ledger.ts";

interface Place { readonly batch: Batch; readonly table: StoredTable["table"] }

/** The stored tables of some imports, each read from the disk while whoever takes them is busy with the one before. */
export class TablesAhead {
  readonly #places: readonly Place[];
  #begun: (Place & { readonly stream: Promise<Uint8Array> }) | null = null;

  /** The first table is begun at once. @param batches in the order in which they are taken */
  constructor(private readonly ledger: Ledger, batches: readonly Batch[]) {
    this.#places = batches.filter(({ broken }) => !broken).flatMap((batch) => batch.tables.map(({ table }) => ({ batch, table })));
    this.#begin(this.#places[0]);
  }

  #begin(place: Place | undefined): void {
    const stream = place && this.ledger.payload(place.batch, place.table);
    // Whoever takes it is told what was wrong with it.
    stream?.catch(() => undefined);
    this.#begun = place && stream ? { ...place, stream } : null;
  }

  #isAt = (one: Place, { batch, table }: Place): boolean => one.batch.id === batch.id && one.table === table;

  /** One table as `Ledger.payload` gives it; the one after it is begun. @throws what `payload` throws */
  async take(batch: Batch, table: StoredTable["table"]): Promise<Uint8Array> {
    const wanted = { batch, table }, begun = this.#begun, at = this.#places.findIndex((one) => this.#isAt(one, wanted));
    this.#begun = null;
    try {
      return await (begun && this.#isAt(begun, wanted) ? begun.stream : this.ledger.payload(batch, table));
    } finally {
      // Not before this one is here: two at once would take each other's time and room.
      this.#begin(at < 0 ? undefined : this.#places[at + 1]);
    }
  }
}
