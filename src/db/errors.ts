/** The engine is closed or its worker has died: nothing more can be asked of it. A new one has to be opened and filled. */
export class EngineGone extends Error {
  override readonly name = "EngineGone";
}

/** The engine could not be started; the message is for the owner. */
export class EngineNotStarted extends Error {
  override readonly name = "EngineNotStarted";
}

/** A statement failed. `statement` is the sentence of its heading, `cause` the engine's own error. */
export class QueryFailed extends Error {
  override readonly name = "QueryFailed";

  constructor(readonly statement: string, reason: string, readonly sql: string, options?: ErrorOptions) {
    super(`${statement}: ${reason}`, options);
  }
}

/** Stored rows cannot be read back as they were written. */
export class DamagedRows extends Error {
  override readonly name = "DamagedRows";
}

/** The engine has no memory left for a piece of work. What it held before is still there; the message is for the owner. */
export class EngineFull extends Error {
  override readonly name = "EngineFull";

  constructor(options?: ErrorOptions) {
    super("There is not enough memory for this many records at once. Close other tabs and programs, or bring fewer years in; "
      + "what was kept before is safe.", options);
  }
}
