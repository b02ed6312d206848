import type { Engine } from "./engine.ts";
import { engineInTurns } from "./engine-in-turns.ts";
import { EngineNotStarted } from "./errors.ts";
import { NativeQueries } from "./native-queries.ts";

export interface NativeMeans {
  /** How many threads may work at once. */
  readonly threads?: number;
  /** Memory the engine may hold, such as `4GB`; what does not fit goes to `folder`. */
  readonly memory?: string;
  /** A folder for a second database, `kept`, and for what does not fit into memory; without one all stays in memory. */
  readonly folder?: string;
}

/** A quantity of memory as the engine understands it: a number with MB or GB. */
export const isMemory = (text: string): boolean => /^[1-9]\d{0,5}(\.\d+)?(MB|GB)$/.test(text);

/** The packaged library, or null where its maker has none for this kind of machine. */
async function library() {
  try {
    return await import("@duckdb/node-api");
  } catch (error) {
    if (error instanceof Error) return null;
    throw error;
  }
}

const quoted = (text: string) => `'${text.replaceAll("'", "''")}'`;

/** The same guards as in the browser: no extension is fetched, nothing outside `folder` is read or written. */
function boot({ threads = 1, memory = "2GB", folder }: NativeMeans): string {
  if (!Number.isInteger(threads) || threads < 1) throw new RangeError(`openNativeEngine: needs threads as a whole number from 1, got ${threads}`);
  if (!isMemory(memory)) throw new RangeError(`openNativeEngine: needs memory such as 4GB, got ${memory}`);
  const own = folder === undefined ? [] : [`set temp_directory=${quoted(`${folder}/spill`)}`, `attach ${quoted(`${folder}/kept.duckdb`)} as kept`];
  return [
    ...own, "set autoload_known_extensions=false", "set autoinstall_known_extensions=false", "set allow_community_extensions=false",
    `set allowed_directories=[${folder === undefined ? "" : quoted(`${folder}/`)}]`, "set enable_external_access=false", "set errors_as_json=true",
    `set memory_limit=${quoted(memory)}`, `set threads=${threads}`, "set preserve_insertion_order=true", "set lock_configuration=true",
  ].join(";");
}

/**
 * Native DuckDB in Node behind the same interface, of the same version as the browser's (1.4.3): for records that do not fit
 * into a browser, and as a yardstick. It may use several threads and a disk.
 *
 * @returns null where there is none for this kind of machine: use `openNodeEngine`
 * @throws {EngineNotStarted} when it is there and does not start
 */
export async function openNativeEngine(means: NativeMeans = {}): Promise<Engine | null> {
  const duck = await library(), settings = boot(means);
  if (duck === null) return null;
  try {
    const instance = await duck.DuckDBInstance.create(":memory:");
    const connection = await instance.connect(), queries = new NativeQueries(duck, instance, connection);
    await queries.text(settings);
    return engineInTurns(queries, queries);
  } catch (cause) {
    throw new EngineNotStarted("The calculating part of Saltbench did not start.", { cause });
  }
}
