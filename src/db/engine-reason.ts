/** What the engine says is wrong; it speaks JSON, and of a text it cannot read JSON within JSON, which the native engine introduces with a word. */
export function reason(error: unknown): string {
  let text = (error instanceof Error ? error.message : String(error)).replace(/^[A-Z][A-Za-z ]* Error: (?=\{)/, "");
  for (let depth = 0; depth < 2 && text.startsWith("{"); depth += 1) {
    try {
      text = String(JSON.parse(text).exception_message);
    } catch (broken) {
      if (!(broken instanceof SyntaxError)) throw broken;
      return text;
    }
  }
  return text;
}

/** Without this a lack of memory would pass for rows that are damaged, and the owner be told to take them out. */
export const isFull = (error: unknown): boolean => /out of memory|failed to allocate|could not allocate/i.test(reason(error));
