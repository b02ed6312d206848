/** Errors of the layers below whose message is already written for the owner. */
const FOR_THE_OWNER = new Set(["LedgerFull", "LedgerNewer", "LedgerDamaged", "LedgerUnavailable", "ImportGone", "RealRecords", "EngineNotStarted", "EngineFull", "BackupRefused", "TicketClosed", "PhotoDamaged", "NoRate", "NoLevel", "NoSum", "BadRollUp"]);

const SENTENCES: Readonly<Record<string, string>> = {
  EngineGone: "The part of Saltbench that does the sums stopped. It is being started again; your records are safe.",
  QuotaExceededError: "There is no room left on this computer's disk. Free some space, then try again; nothing was changed.",
  NotReadableError: "A file could not be read. If it is open in another program, close it there and try again.",
  NotFoundError: "A file was moved or changed while it was being read. Choose it again.",
};

/**
 * A plain sentence for an error; one that nobody foresaw shows its message, so that it can be told to someone.
 *
 * @example
 * sentence(new RangeError("odd")); // => "Something went wrong that Saltbench did not expect: odd"
 */
export function sentence(error: unknown): string {
  const name = error instanceof Error ? error.name : "";
  const message = error instanceof Error ? error.message : String(error);
  if (FOR_THE_OWNER.has(name)) return message;
  if (Object.hasOwn(SENTENCES, name)) return SENTENCES[name] ?? message;
  return `Something went wrong that Saltbench did not expect: ${message}`;
}
