import { existsSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";

/**
 * The plain files at or below a path, links and names that begin with a dot left out, in an order that does not depend on the file system.
 *
 * @param {string} root
 * @param {string} [below] a file or folder relative to `root`, with `/`; empty for `root` itself
 * @returns {string[]} paths relative to `root`, with `/`; none when there is nothing at `below`
 */
export function plainFiles(root, below = "") {
  const start = join(root, below);
  if (!existsSync(start)) return [];
  if (statSync(start).isFile()) return [below];
  const entries = readdirSync(start, { withFileTypes: true }).sort((a, b) => (a.name < b.name ? -1 : 1));
  return entries.filter((entry) => !entry.name.startsWith(".") && (entry.isFile() || entry.isDirectory()))
    .flatMap((entry) => plainFiles(root, below === "" ? entry.name : `${below}/${entry.name}`));
}
