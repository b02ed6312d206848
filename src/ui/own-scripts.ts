interface TrustedTypes {
  createPolicy(name: string, rules: { createScriptURL(address: string): string | null }): unknown;
}

/** The one script outside the workers' folder that may start: a service worker answers only for the folder it lies in. */
const SERVICE_WORKER = "service-worker.js";

/** The address when it is a worker of ours, else null: nothing else may become a script. */
export function ownWorker(address: string, page: string): string | null {
  const url = new URL(address, page);
  const folder = new URL("workers/", page);
  if (url.href === new URL(SERVICE_WORKER, page).href) return url.href;
  return url.origin === folder.origin && url.pathname.startsWith(folder.pathname) ? url.href : null;
}

/**
 * Stands between text and scripts where the browser knows Trusted Types and the server asks for them: a worker starts
 * only from our own folder, whoever starts it, and no text becomes HTML or script.
 */
export function guardScripts(types = (globalThis as { trustedTypes?: TrustedTypes }).trustedTypes): void {
  types?.createPolicy("default", { createScriptURL: (address) => ownWorker(address, document.baseURI.replace(/[?#].*$/, "")) });
}
