/** Phrases written one after the other with semicolons between them. */
export const listed = (text: string): readonly string[] => text.split(";").map((phrase) => phrase.trim()).filter((phrase) => phrase !== "");
