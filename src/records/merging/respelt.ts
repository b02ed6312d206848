import type { Engine } from "../../db/engine.ts";
import respelt from "./respelt.sql?raw";

/** A ticket number as a row has it, and as it is read: the way the shop writes most of them. */
export interface Respelt {
  readonly written: string;
  readonly ticket_no: string;
}

/** Ticket numbers read otherwise than written, by number. */
export async function respeltNumbers(engine: Engine, signal?: AbortSignal): Promise<readonly Respelt[]> {
  return engine.rows<Respelt>(respelt, {}, signal);
}
