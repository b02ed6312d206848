import putOff from "./derive/3-put-off.sql?raw";
import type { Engine } from "./engine.ts";
import { deriveRest } from "./prepare.ts";
import { untilCancelled } from "./turns.ts";

/** Tables that may be put off, and what is made of them. A word too many costs a wait; one too few, an error, as the table is not there. */
const PUT_OFF = /\b(?:inspected|inspections|failures|places)\b/;

/**
 * The same engine; what `deriveFirst` put off is derived before the first statement that reads it.
 *
 * Whether something is put off stands in the engine itself, so that whoever derives all anew, or takes it back, need not say so here.
 */
export function deriveInTime(engine: Engine): Engine {
  let settled = false;
  const whole = async (of: Engine): Promise<void> => {
    await deriveRest(of);
    settled = true;
  };
  const over = (of: Engine): Engine => {
    const first = async <T>(scripts: readonly string[], ask: () => Promise<T>, signal?: AbortSignal): Promise<T> => {
      // Called off, the question ends at once and the deriving goes on: the next one needs it.
      if (!settled && scripts.some((sql) => PUT_OFF.test(sql))) await untilCancelled(whole(of), signal);
      return ask();
    };
    return {
      rows: (sql, values, signal) => first([sql], () => of.rows(sql, values, signal), signal),
      columns: (sql, values, signal) => first([sql], () => of.columns(sql, values, signal), signal),
      run: async (scripts, values, signal) => {
        await first(scripts, () => of.run(scripts, values, signal), signal);
        if (scripts.includes(putOff)) settled = false;
      },
      stream: (sql, values) => first([sql], () => of.stream(sql, values)),
      load: (table, stream, rows, same) => of.load(table, stream, rows, same),
      transaction: async (work, signal) => {
        try {
          return await of.transaction((inside) => work(over(inside)), signal);
        } catch (error) {
          settled = false;
          throw error;
        }
      },
      close: () => of.close(),
    };
  };
  return over(engine);
}
