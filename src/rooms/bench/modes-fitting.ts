import { grades, modes } from "../../records/vocabulary-tables.ts";

/** Faults to choose from: those known of this family of part first, then the others. */
export function modesFitting(family: string): readonly string[] {
  const fits = ({ families }: { families: readonly string[] }) => families.length === 0 || families.includes(family);
  return [...modes.filter(fits), ...modes.filter((one) => !fits(one))].map(({ mode }) => mode);
}

/** How each grade looks on this family of part, 0 to 4. */
export const gradeLooks = (family: string): readonly { readonly grade: string; readonly word: string; readonly look: string }[] =>
  grades.filter((one) => one.family === family).map(({ grade, word, look }) => ({ grade: String(grade), word, look }));
