/** What the command asks for. */
export interface ReportArguments {
  readonly folder: string;
  readonly out: string;
  readonly as_of: string | null;
}

export const USAGE = "Usage: npm run report -- RECORDS_FOLDER --out OUT_FOLDER [--as-of YYYY-MM-DD]";

/** The words of the command line, or a sentence that says what is wrong with them. */
export function reportArguments(argv: readonly string[]): ReportArguments | string {
  const given = { folder: null as string | null, out: null as string | null, as_of: null as string | null };
  for (let i = 0; i < argv.length; i += 1) {
    const [name = "", after] = (argv[i] ?? "").split(/=(.*)/s), key = name === "--out" ? "out" : name === "--as-of" ? "as_of" : null;
    if (key !== null) {
      const value = after ?? argv[(i += 1)];
      if (value === undefined || value === "") return `${name} needs a value. ${USAGE}`;
      given[key] = value;
    } else if (name.startsWith("--")) return `Unknown option ${name}. ${USAGE}`;
    else if (given.folder === null) given.folder = argv[i] ?? "";
    else return `One folder only, got also ${argv[i] ?? ""}. ${USAGE}`;
  }
  const { folder, out, as_of } = given;
  if (folder === null || out === null) return USAGE;
  return { folder, out, as_of };
}
