/** A number as an owner would say it: three digits that matter, no trailing zeros, thin space between thousands. */
export function number(value: number): string {
  const digits = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 10 ? 1 : 2;
  const [whole = "", part] = value.toFixed(digits).split(".");
  const tail = part?.replace(/0+$/, "");
  return whole.replace(/\B(?=(\d{3})+$)/g, "\u202f") + (tail ? `.${tail}` : "");
}

/** `1 number`, `3 numbers`. */
export function pieces(count: number, word: string): string {
  return `${number(count)} ${word}${count === 1 ? "" : "s"}`;
}
