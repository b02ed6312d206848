/** `kept`: only the owner can remove the records. `at risk`: the browser may clear them when the disk fills up. */
export type Keeping = "kept" | "at risk" | "unknown";

/**
 * Asks the browser to keep the records however full the disk is, and says what it answered.
 *
 * A browser decides by itself (it may look at bookmarks and visits) or asks its user; ask at an import, not at start.
 */
export async function askToKeep(storage: StorageManager | undefined = navigator.storage): Promise<Keeping> {
  if (!storage?.persist) return "unknown";
  return (await storage.persisted()) || (await storage.persist()) ? "kept" : "at risk";
}
