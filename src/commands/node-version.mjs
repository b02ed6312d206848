/**
 * Ends the command with a plain sentence on a Node that is too old. It is called before anything else is loaded, so that
 * an old Node meets nothing it cannot read.
 *
 * @param {string} [version] as `process.versions.node` writes it
 */
export function requireNode(version = process.versions.node) {
  if (isEnough(version)) return;
  console.error(`Saltbench needs Node 20.19 or newer; this is Node ${version}. Get it from your system's packages or nodejs.org, then try again.`);
  process.exit(1);
}

/**
 * @param {string} version
 * @example
 * isEnough("20.18.3"); // => false
 */
export function isEnough(version) {
  const [major = 0, minor = 0] = version.split(".").map(Number);
  return major > 20 || (major === 20 && minor >= 19);
}
