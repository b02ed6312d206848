/** Letters as `A`, figures as `9`: `R-1041` is `A-9999`. */
const shapeOf = (text: string) => text.replace(/\p{L}/gu, "A").replace(/\d/g, "9");

/** A file with ever new shapes must not fill the memory. */
const MOST_SHAPES = 2_000;

/** Learns how a shop writes its numbers, and mends letters typed for figures (`R-1O43`). */
export class TicketNumbers {
  private readonly shapes = new Map<string, number>();

  /** @param text not blank */
  see(text: string): void {
    const shape = shapeOf(text);
    if (this.shapes.size < MOST_SHAPES || this.shapes.has(shape)) this.shapes.set(shape, (this.shapes.get(shape) ?? 0) + 1);
  }

  /**
   * The number with `O` and `I` or `l` as figures, where that makes it one of the shape most numbers of the file have.
   *
   * @returns the text itself where nothing is to mend
   */
  mended(text: string): string {
    const shape = shapeOf(text), usual = this.usual();
    if (usual === null || shape === usual || !/[OoIl]/.test(text)) return text;
    const letters = [...text], wanted = [...usual];
    if (letters.length !== wanted.length) return text;
    const figures: Readonly<Record<string, string>> = { O: "0", o: "0", I: "1", l: "1" };
    const mended = letters.map((letter, at) => (wanted[at] === "9" ? figures[letter] ?? letter : letter)).join("");
    return shapeOf(mended) === usual ? mended : text;
  }

  /** The shape of more than half of the numbers. */
  private usual(): string | null {
    let all = 0, best: string | null = null, most = 0;
    for (const [shape, count] of this.shapes) {
      all += count;
      if (count > most) [best, most] = [shape, count];
    }
    return most * 2 > all ? best : null;
  }
}

/** 32 bits of a text (FNV-1a, then mixed), as six letters and figures. */
function sixLetters(text: string): string {
  let lane = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) lane = Math.imul(lane ^ text.charCodeAt(at), 0x01000193);
  lane = Math.imul(lane ^ (lane >>> 16), 0x85ebca6b);
  return ((lane ^ (lane >>> 13)) >>> 0).toString(36).padStart(6, "0").slice(-6);
}

/** Gives a number to jobs of a shop that writes none: from day and content, so that the same row gets it in every import. */
export class MadeNumbers {
  private readonly given = new Map<string, number>();

  /**
   * @param day `YYYY-MM-DD`
   * @param content the row's own cells
   */
  numberFor(day: string, content: string): string {
    const number = `${day.replaceAll("-", "")}-${sixLetters(content)}`, nth = (this.given.get(number) ?? 0) + 1;
    this.given.set(number, nth);
    return nth === 1 ? number : `${number}-${nth}`;
  }
}
