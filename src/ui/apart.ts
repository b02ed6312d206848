/**
 * Places moved so that neighbours stand at least `gap` apart, each as near to its own as that allows: where labels would
 * lie on each other.
 *
 * @returns the new places, in the order given
 * @example
 * apart([10, 12, 40], 8); // => [7, 15, 40]
 */
export function apart(places: readonly number[], gap: number): number[] {
  interface Run { sum: number; of: number[] }
  const start = (run: Run) => run.sum / run.of.length - (gap * (run.of.length - 1)) / 2;
  const runs: Run[] = [];
  for (const at of places.map((_, i) => i).sort((a, b) => (places[a] ?? 0) - (places[b] ?? 0))) {
    let run: Run = { sum: places[at] ?? 0, of: [at] };
    for (let last = runs.at(-1); last && start(last) + gap * last.of.length > start(run); last = runs.at(-1)) {
      run = { sum: last.sum + run.sum, of: [...last.of, ...run.of] };
      runs.pop();
    }
    runs.push(run);
  }
  const moved = new Array<number>(places.length).fill(0);
  for (const run of runs) run.of.forEach((at, i) => (moved[at] = start(run) + gap * i));
  return moved;
}
