import { isMemory } from "../db/open-native.ts";

/** What the command asks for. */
export interface ReportArguments {
  /** The records of one shop, or of many: a folder for each. */
  readonly folder: string;
  readonly many: boolean;
  readonly out: string;
  readonly as_of: string | null;
  /** Of many shops: threads and memory of the engine, and whether each shop's own report is left out. */
  readonly threads: number;
  readonly memory: string;
  readonly pooled_only: boolean;
}

export const USAGE = "Usage: npm run report -- RECORDS_FOLDER --out OUT_FOLDER [--as-of YYYY-MM-DD], or for many shops "
  + "npm run report -- --shops FOLDER_OF_SHOPS --out OUT_FOLDER [--as-of YYYY-MM-DD] [--threads 2] [--memory 4GB] [--pooled-only]";

const WITH_VALUE = ["--out", "--as-of", "--shops", "--threads", "--memory"] as const;
type Given = Partial<Record<(typeof WITH_VALUE)[number] | "folder" | "--pooled-only", string>>;

/** The words by their options, or a sentence. */
function words(argv: readonly string[]): Given | string {
  const given: Given = {};
  for (let i = 0; i < argv.length; i += 1) {
    const [name = "", after] = (argv[i] ?? "").split(/=(.*)/s), key = WITH_VALUE.find((one) => one === name);
    if (key) {
      const value = after ?? argv[(i += 1)];
      if (value === undefined || value === "") return `${name} needs a value. ${USAGE}`;
      given[key] = value;
    } else if (name === "--pooled-only") given["--pooled-only"] = "yes";
    else if (name.startsWith("--")) return `Unknown option ${name}. ${USAGE}`;
    else if (given.folder === undefined) given.folder = argv[i] ?? "";
    else return `One folder only, got also ${argv[i] ?? ""}. ${USAGE}`;
  }
  return given;
}

/** The words of the command line, or a sentence that says what is wrong with them. */
export function reportArguments(argv: readonly string[]): ReportArguments | string {
  const given = words(argv);
  if (typeof given === "string") return given;
  const { folder, "--shops": shops, "--out": out, "--as-of": as_of = null, "--threads": threads = "2", "--memory": memory = "4GB" } = given;
  if ((folder === undefined) === (shops === undefined) || out === undefined) return folder !== undefined && shops !== undefined ? `One folder only, got also ${folder}. ${USAGE}` : USAGE;
  if (!/^[1-9]\d?$/.test(threads)) return `--threads needs a whole number from 1 to 99, got ${threads}.`;
  if (!isMemory(memory)) return `--memory needs a quantity such as 4GB or 800MB, got ${memory}.`;
  if (shops === undefined && (given["--threads"] ?? given["--memory"] ?? given["--pooled-only"]) !== undefined) return `--threads, --memory and --pooled-only go with --shops. ${USAGE}`;
  return { folder: shops ?? folder ?? "", many: shops !== undefined, out, as_of, threads: Number(threads), memory, pooled_only: given["--pooled-only"] !== undefined };
}
