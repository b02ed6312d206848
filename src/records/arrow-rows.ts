import { Bool, DateDay, Dictionary, Field, Float64, Int32, RecordBatch, Schema, Struct, Utf8, makeData, tableToIPC, Table as ArrowTable, vectorFromArray } from "apache-arrow";
import type { Data, DataType } from "apache-arrow";
import type { CellValue } from "./checking/cell.ts";
import type { Kind, Table } from "./columns.ts";

/** Rows of one table as an Arrow IPC stream, with their number. */
export interface ArrowRows {
  readonly rows: number;
  readonly stream: Uint8Array<ArrayBuffer>;
}

const DAY_MS = 86_400_000;

/** One column while its rows come in; missing values are null to the end. */
interface Store {
  push(value: CellValue): void;
  data(): Data;
}

class Validity {
  private bits = new Uint8Array(1024);
  nulls = 0;
  length = 0;

  push(present: boolean): void {
    const at = this.length >> 3;
    if (at >= this.bits.length) {
      const wider = new Uint8Array(this.bits.length * 2);
      wider.set(this.bits);
      this.bits = wider;
    }
    if (present) this.bits[at] = (this.bits[at] ?? 0) | (1 << (this.length & 7));
    else this.nulls += 1;
    this.length += 1;
  }

  parts(): { length: number; nullCount: number; nullBitmap: Uint8Array } {
    return { length: this.length, nullCount: this.nulls, nullBitmap: this.bits.slice(0, (this.length + 7) >> 3) };
  }
}

/** Texts repeat, so each is stored once and the rows point at it. */
class TextStore implements Store {
  private readonly places = new Map<string, number>();
  private readonly indices: number[] = [];
  private readonly validity = new Validity();

  push(value: CellValue): void {
    this.validity.push(value !== null);
    if (value === null) return void this.indices.push(0);
    const text = String(value);
    let place = this.places.get(text);
    if (place === undefined) this.places.set(text, (place = this.places.size));
    this.indices.push(place);
  }

  data(): Data {
    const type = new Dictionary(new Utf8(), new Int32());
    // A dictionary without entries is read as damaged, so a column without texts has one that nothing points at.
    const words = this.places.size === 0 ? [""] : [...this.places.keys()];
    return makeData({ type, ...this.validity.parts(), data: Int32Array.from(this.indices), dictionary: vectorFromArray(words, new Utf8()) });
  }
}

class NumberStore implements Store {
  private readonly numbers: number[] = [];
  private readonly validity = new Validity();
  private readonly kind: "number" | "whole" | "date";

  constructor(kind: "number" | "whole" | "date") {
    this.kind = kind;
  }

  push(value: CellValue): void {
    this.validity.push(value !== null);
    const number = this.kind === "date" && value !== null ? Date.parse(`${String(value)}T00:00:00Z`) / DAY_MS : Number(value ?? 0);
    this.numbers.push(number);
  }

  data(): Data {
    const parts = this.validity.parts();
    if (this.kind === "number") return makeData({ type: new Float64(), ...parts, data: Float64Array.from(this.numbers) });
    const data = Int32Array.from(this.numbers);
    return this.kind === "date" ? makeData({ type: new DateDay(), ...parts, data }) : makeData({ type: new Int32(), ...parts, data });
  }
}

class YesNoStore implements Store {
  private readonly bits = new Validity();
  private readonly validity = new Validity();

  push(value: CellValue): void {
    this.validity.push(value !== null);
    this.bits.push(value === true);
  }

  data(): Data {
    return makeData({ type: new Bool(), ...this.validity.parts(), data: this.bits.parts().nullBitmap });
  }
}

function store(kind: Kind): Store {
  if (kind === "number" || kind === "money") return new NumberStore("number");
  if (kind === "whole" || kind === "date") return new NumberStore(kind);
  return kind === "yes_no" ? new YesNoStore() : new TextStore();
}

/** Columns every staged row has beside those of its table, in this order. */
const ORIGIN = [["file_no", "whole"], ["source_file", "text"], ["source_line", "whole"], ["row_key", "text"]] as const;

export interface StagedRow {
  readonly values: readonly CellValue[];
  readonly came_in_guessed: boolean;
  readonly file_no: number;
  readonly source_file: string;
  readonly source_line: number;
  readonly row_key: string;
}

/** Collects checked rows of one table and gives them out as Arrow IPC streams of some ten thousand rows. */
export class ArrowCollector {
  length = 0;
  private names: string[] = [];
  private stores: Store[] = [];
  private readonly table: Table;

  constructor(table: Table) {
    this.table = table;
    this.empty();
  }

  push(row: StagedRow): void {
    const guessed = this.table.name === "tickets" ? [row.came_in_guessed] : [];
    const cells = [...row.values, ...guessed, row.file_no, row.source_file, row.source_line, row.row_key];
    for (const [at, one] of this.stores.entries()) one.push(cells[at] ?? null);
    this.length += 1;
  }

  /** The rows collected so far; the collector starts anew. */
  take(): ArrowRows {
    const children = this.stores.map((one) => one.data());
    const schema = new Schema(children.map(({ type }, at) => new Field(this.names[at] ?? "", type as DataType, true)));
    const struct = makeData({ type: new Struct(schema.fields), length: this.length, nullCount: 0, children });
    const stream = tableToIPC(new ArrowTable([new RecordBatch(schema, struct)]), "stream") as Uint8Array<ArrayBuffer>;
    const rows = this.length;
    this.empty();
    return { rows, stream };
  }

  private empty(): void {
    const guessed = this.table.name === "tickets" ? [["came_in_guessed", "yes_no"] as const] : [];
    const columns = [...this.table.columns.map(({ name, kind }) => [name, kind] as const), ...guessed, ...ORIGIN];
    this.names = columns.map(([name]) => name);
    this.stores = columns.map(([, kind]) => store(kind));
    this.length = 0;
  }
}
