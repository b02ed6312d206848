import type { Engine } from "../../db/engine.ts";
import type { Imported } from "../../records/importing.ts";
import { keepFigures } from "./keep-figures.ts";
import countsSql from "./shop-counts.sql?raw";
import keepSql from "./keep-shop.sql?raw";
import keptSql from "./kept-tables.sql?raw";
import pooledSql from "./pooled-tables.sql?raw";
import type { ShopLine } from "./shops-table.ts";

/** Numbers of visits are whole numbers of 32 bits. */
const MOST_VISITS = 2 ** 31 - 1;

type Counts = Omit<ShopLine, "shop" | "from" | "to" | "rows_read" | "rows_to_fix" | "note"> & { readonly from_date: string | null; readonly to_date: string | null; readonly visits: number };

function noteOf({ files }: Imported): string {
  return files.flatMap(({ file, unreadable }) => (unreadable === null ? [] : [`${file}: ${unreadable}`])).join(" ");
}

/** Where the shops' visits, inspections and failures come together. */
export class KeptShops {
  #shops = 0;
  #visits = 0;

  private constructor(private readonly engine: Engine) {}

  /** @param engine with all tables made, and a schema or database `kept` */
  static async open(engine: Engine): Promise<KeptShops> {
    await engine.run([keptSql]);
    return new KeptShops(engine);
  }

  /**
   * Keeps what the engine holds now as one shop more.
   *
   * @throws {RangeError} when there are more visits than can be numbered
   */
  async add(shop: string, taken: Imported): Promise<ShopLine> {
    const [counts] = await this.engine.rows<Counts>(countsSql);
    if (!counts) throw new RangeError("add: needs a derived shop in the engine");
    const { visits, from_date: from, to_date: to, ...rest } = counts, from_visit = this.#visits;
    if (from_visit + visits > MOST_VISITS) throw new RangeError(`add: needs at most ${MOST_VISITS} visits in all, got more with ${shop}`);
    await this.engine.run([keepSql], { shop, shop_no: this.#shops += 1, from_visit });
    this.#visits += visits;
    await keepFigures(this.engine, shop);
    return { shop, ...rest, from, to, rows_read: taken.files.reduce((sum, file) => sum + file.rows_read, 0), rows_to_fix: taken.rejects.length, note: noteOf(taken) };
  }

  /** From now on the answers read all shops together. */
  async pool(): Promise<void> {
    await this.engine.run([pooledSql]);
  }
}
