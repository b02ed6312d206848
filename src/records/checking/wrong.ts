/** Why a cell cannot be taken over, in a sentence without its full stop. */
export class Wrong {
  readonly reason: string;
  constructor(reason: string) {
    this.reason = reason;
  }
}

/** A text of the owner's, shortened so that a reason stays readable. */
export function quoted(text: string): string {
  const line = text.replace(/\s+/g, " ");
  return `“${line.length > 40 ? `${line.slice(0, 39)}…` : line}”`;
}
