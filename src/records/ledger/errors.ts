/** The disk has no room: nothing of the last write was kept, everything before it was. */
export class LedgerFull extends Error {
  override readonly name = "LedgerFull";

  constructor(options?: ErrorOptions) {
    super("There is no room left to keep your records. Nothing of this last step was saved; everything before it is safe. "
      + "Free some space on this computer, then try again.", options);
  }
}

/** A later version of the app wrote the records. They are not touched. */
export class LedgerNewer extends Error {
  override readonly name = "LedgerNewer";

  constructor(options?: ErrorOptions) {
    super("These records were kept by a newer version of Saltbench. They are safe and were left as they are. "
      + "Open them with the newer version.", options);
  }
}

/** Stored bytes of one import are not what was written. */
export class LedgerDamaged extends Error {
  override readonly name = "LedgerDamaged";

  /** @param import_no which import; null when it cannot be told any more */
  constructor(readonly import_no: number | null, what: string, options?: ErrorOptions) {
    super(`${import_no === null ? "A kept import" : `Import ${import_no}`} can no longer be read: ${what}. `
      + "Import its files again or restore a backup.", options);
  }
}

/** The import that was to be replaced is not there any more: nothing was changed. */
export class ImportGone extends Error {
  override readonly name = "ImportGone";

  constructor() {
    super("This import was taken out, or read again, in another window meanwhile. Nothing was changed here. Look at what is there now, then try again.");
  }
}

/** The demo was to come in beside real records: it was left out. */
export class RealRecords extends Error {
  override readonly name = "RealRecords";

  constructor() {
    super("Records came in from another window meanwhile, and invented and real records never stand together: the demo was not opened.");
  }
}

/** The browser gives no place to keep records, or has taken it away. */
export class LedgerUnavailable extends Error {
  override readonly name = "LedgerUnavailable";

  constructor(why: string, options?: ErrorOptions) {
    super(`Your records cannot be kept or read at the moment: ${why}`, options);
  }
}
