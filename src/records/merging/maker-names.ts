import { lettersAllowed, lettersApart } from "./likeness.ts";
import { bare } from "./model-name.ts";

/** How one maker's name is told to be another. */
export interface MakerRead {
  readonly maker: string;
  readonly how: "same" | "alike" | "shortened";
}

/** `Ost.` of Ostvarg, `B'helm` of Brackhelm. */
function isShortened(written: string, whole: string): boolean {
  const [, front, back] = /^(\p{L}+)['’](\p{L}+)$/u.exec(written.trim()) ?? [];
  const long = bare(whole);
  if (front !== undefined && back !== undefined) return long.startsWith(bare(front)) && long.endsWith(bare(back)) && long.length > bare(written).length;
  return /^\p{L}{3,}\.$/u.test(written.trim()) && long.startsWith(bare(written)) && long.length > bare(written).length;
}

function howRead(written: string, other: string): MakerRead["how"] | null {
  const [a, b] = [bare(written), bare(other)];
  if (a === b) return "same";
  if (isShortened(written, other)) return "shortened";
  const most = lettersAllowed(Math.min(a.length, b.length));
  return most > 0 && lettersApart(a, b, most) <= most ? "alike" : null;
}

/**
 * Which maker each written name stands for: itself, or a commoner name that differs in case, spaces or a letter, or that it
 * is short for. Where two makers would do, it stays itself.
 *
 * @param counts how often each is written, all above zero
 */
export function makersRead(counts: ReadonlyMap<string, number>): ReadonlyMap<string, MakerRead> {
  const common = [...counts].sort(([a, n], [b, m]) => m - n || (a < b ? -1 : 1));
  const found = new Map<string, MakerRead>();
  for (const [written, n] of common) {
    const heads = [...found].filter(([name, read]) => read.maker === name).map(([name]) => name);
    const same = heads.find((name) => howRead(written, name) === "same");
    const near = heads.filter((name) => howRead(written, name) !== null && (counts.get(name) ?? 0) >= 3 * n);
    const [only] = near;
    if (same !== undefined) found.set(written, { maker: same, how: "same" });
    else if (near.length === 1 && only !== undefined) found.set(written, { maker: only, how: howRead(written, only) ?? "alike" });
    else found.set(written, { maker: written, how: "same" });
  }
  return found;
}
