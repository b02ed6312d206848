import { spawn } from "node:child_process";
import { accessSync, constants } from "node:fs";
import { delimiter, join } from "node:path";

/**
 * The file a command name stands for on the path, or null.
 *
 * @param {string} name
 * @param {string} [path]
 */
export function onPath(name, path = process.env.PATH ?? "") {
  const places = path.split(delimiter).filter((folder) => folder !== "").map((folder) => join(folder, name));
  return places.find(isExecutable) ?? null;
}

/** @param {string} file */
export function isExecutable(file) {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch (error) {
    if (error instanceof Error && "code" in error) return false;
    throw error;
  }
}

/**
 * What opens an address on this desktop, or null where nobody sits before one.
 *
 * @param {NodeJS.ProcessEnv} [env]
 * @param {NodeJS.Platform} [platform]
 */
export function desktopOpener(env = process.env, platform = process.platform) {
  if (env.SALTBENCH_NO_OPEN || env.CI || env.SSH_CONNECTION) return null;
  if (platform === "darwin") return onPath("open", env.PATH);
  return env.DISPLAY || env.WAYLAND_DISPLAY ? onPath("xdg-open", env.PATH) : null;
}

/**
 * Shows the address in the default browser where there is a desktop; the address is printed anyway, so a browser that
 * does not come is no failure.
 *
 * @param {string} url
 */
export function openBrowser(url) {
  const opener = desktopOpener();
  if (opener === null) return;
  const child = spawn(opener, [url], { stdio: "ignore", detached: true });
  child.on("error", () => console.error(`Your browser did not open by itself; the address is ${url}`));
  child.unref();
}
