import type { Engine } from "./db/engine.ts";
import type { Batch } from "./records/ledger/ledger.ts";

/** What the app remembers while it is open. */
class Session {
  /** "opening" until records stand in the engine; "stopped" when the engine cannot be had, with the reason in `trouble`. */
  status = $state.raw<"opening" | "ready" | "stopped">("opening");
  /** Set while `status` is "ready"; a new one after a restart, so read it where you use it. */
  engine = $state.raw<Engine | null>(null);
  /** Goes up whenever the records changed: read it in what must be asked anew. */
  version = $state(0);
  /** Imports, oldest first. */
  batches = $state.raw<readonly Batch[]>([]);
  /** Last day the records speak of where they are the demo's, else today: `YYYY-MM-DD`. */
  today = $state("");
  /** Heading of printed sheets; the owner's own word, else null. */
  shop = $state<string | null>(null);
  /** The shop's word for its money, "" until set. */
  currency = $state("");
  /** A plain sentence about what went wrong, else null. */
  trouble = $state<string | null>(null);

  /** True while the records shown are the invented shop's. */
  get demo(): boolean {
    return this.batches.some((batch) => batch.origin === "demo");
  }

  /** True when there are no records at all. */
  get bare(): boolean {
    return this.batches.length === 0;
  }
}

export const session = new Session();
