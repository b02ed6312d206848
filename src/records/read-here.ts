import { readFile } from "./reading/read-file.ts";
import type { ReadFile } from "./reading/read-file.ts";

/** Reads files on this thread: in Node, and where no worker can be had. */
export const readHere: ReadFile = (file, options) => readFile(file, options);
