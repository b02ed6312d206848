import { execFileSync } from "node:child_process";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { ROOT } from "./root.mjs";

/** Where the two lists lie. */
export const SUPPLY = join(ROOT, "data/supply");

/**
 * The packages a lock file names, in the order of their names and versions; `dev` where nothing of it is in the app.
 *
 * @param {{ packages: Record<string, { version?: string, license?: string, dev?: boolean, optional?: boolean, link?: boolean }> }} lock
 * @returns {{ name: string, version: string, license: string, dev: boolean }[]}
 */
export function lockedPackages({ packages }) {
  const found = new Map();
  for (const [path, { version, license, dev = false, link = false }] of Object.entries(packages)) {
    if (path === "" || link || version === undefined) continue;
    const name = path.slice(path.lastIndexOf("node_modules/") + "node_modules/".length), key = `${name}@${version}`, before = found.get(key);
    found.set(key, { name, version, license: license ?? before?.license ?? "not said", dev: dev && (before?.dev ?? true) });
  }
  return [...found.values()].sort((a, b) => (a.name < b.name ? -1 : a.name > b.name ? 1 : a.version < b.version ? -1 : 1));
}

/**
 * @typedef {{ "bom-ref": string, externalReferences?: unknown, properties?: unknown }} Component
 * @typedef {{ ref: string, dependsOn?: string[] }} Needs
 * @typedef {{ serialNumber?: string, metadata: { timestamp?: string, tools?: unknown, component?: Partial<Component> }, components: Component[], dependencies: Needs[] }} Sbom
 */

/**
 * Where a package is fetched from is the fetcher's business, and its place in node_modules is npm's.
 *
 * @template {Partial<Component>} C
 * @param {C} component
 */
function plainComponent({ externalReferences: _from, properties: _place, ...component }) {
  return component;
}

/**
 * npm's own CycloneDX list without what differs from run to run.
 *
 * @param {string} text
 */
export function plainSbom(text) {
  const sbom = /** @type {Sbom} */ (JSON.parse(text));
  const components = [...sbom.components].sort((a, b) => (a["bom-ref"] < b["bom-ref"] ? -1 : 1)).map(plainComponent);
  const dependencies = sbom.dependencies.map((one) => ({ ...one, ...(one.dependsOn && { dependsOn: [...one.dependsOn].sort() }) })).sort((a, b) => (a.ref < b.ref ? -1 : 1));
  // Its name is told by the folder it lies in.
  const root = plainComponent(sbom.metadata.component ?? {}), metadata = { ...sbom.metadata, timestamp: undefined, tools: undefined, component: { ...root, name: root["bom-ref"]?.replace(/@[^@]*$/, "") } };
  return `${JSON.stringify({ ...sbom, serialNumber: undefined, metadata, components, dependencies }, null, 1)}\n`;
}

/**
 * The licences of what is in the app, as a table.
 *
 * @param {ReturnType<typeof lockedPackages>} packages
 */
export function licencesText(packages) {
  const own = packages.filter(({ dev }) => !dev), kinds = grouped(own);
  const counts = [...kinds].map(([license, some]) => `${some.length} ${license}`).sort().join(", ");
  const rows = own.map(({ name, version, license }) => `| ${name} | ${version} | ${license} |`);
  return `# Licences of what the app is built from\n\n${own.length} packages: ${counts}. Written by \`node src/commands/write-supply.mjs\` from package-lock.json; packages that only build or test are in sbom.cdx.json.\n\n| package | version | licence |\n| --- | --- | --- |\n${rows.join("\n")}\n`;
}

/** @param {ReturnType<typeof lockedPackages>} packages */
function grouped(packages) {
  const kinds = new Map();
  for (const one of packages) kinds.set(one.license, [...(kinds.get(one.license) ?? []), one]);
  return kinds;
}

export const readLock = () => JSON.parse(readFileSync(join(ROOT, "package-lock.json"), "utf8"));

function write() {
  const sbom = execFileSync("npm", ["sbom", "--sbom-format", "cyclonedx", "--package-lock-only"], { cwd: ROOT, encoding: "utf8", maxBuffer: 64 * 1024 ** 2 });
  mkdirSync(SUPPLY, { recursive: true });
  writeFileSync(join(SUPPLY, "sbom.cdx.json"), plainSbom(sbom));
  writeFileSync(join(SUPPLY, "licences.md"), licencesText(lockedPackages(readLock())));
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) write();
