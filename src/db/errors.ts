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
