/** What JSON text says; null where it is no JSON. */
export function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    if (error instanceof SyntaxError) return null;
    throw error;
  }
}
