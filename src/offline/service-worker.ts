import { isHashed } from "../commands/headers.mjs";
import { keepFiles, lookOver, NoRoom, type Shelf } from "./keep-files.ts";
import type { Said, Told } from "./messages.ts";
import { isOurs, nameOf, pathOf, type Program } from "./program.ts";

/** Put in by the build (`src/commands/installable.mjs`). */
declare const PROGRAM: Program;

const program: Program = PROGRAM;
const worker = self as unknown as ServiceWorkerGlobalScope;
const scope = worker.registration.scope;
const own = nameOf(program.version);
/** Whoever's page never stands, because a file is broken, has its files looked over all the same. */
const LONGEST_OPENING = 30_000;

async function room(): Promise<number | null> {
  const { quota, usage } = await navigator.storage.estimate();
  return quota === undefined || usage === undefined ? null : quota - usage;
}

const shelf = async (): Promise<Shelf> => ({
  scope, room, cache: await caches.open(own), elsewhere: (address) => caches.match(address, { ignoreVary: true }), fetch: (address, how) => fetch(address, how),
});

async function tell(told: Told): Promise<void> {
  for (const client of await worker.clients.matchAll({ includeUncontrolled: true })) client.postMessage(told);
}

async function install(): Promise<void> {
  try {
    await keepFiles(program, await shelf());
  } catch (error) {
    const full = error instanceof NoRoom || (error instanceof DOMException && error.name === "QuotaExceededError");
    // What was kept so far would only take room from the records.
    if (full) await caches.delete(own);
    await tell({ tell: "not kept", why: full ? "no room" : "not fetched" });
    throw error;
  }
}

/** A window of an older version asks for files of its own: their names are in no other version. */
async function kept(path: string): Promise<Response | undefined> {
  try {
    const address = scope + path, mine = await caches.match(address, { cacheName: own, ignoreVary: true });
    return mine ?? (isHashed(path) ? await caches.match(address, { ignoreVary: true }) : undefined);
  } catch (error) {
    // A store that fails must not stand between the page and the server.
    if (error instanceof DOMException) return undefined;
    throw error;
  }
}

/** Takes away the files of versions that no window runs any more. */
async function tidy(): Promise<void> {
  const names = (await caches.keys()).filter((name) => isOurs(name) && name !== own);
  const { held, pending } = await navigator.locks.query();
  const { installing, waiting } = worker.registration;
  if (installing || waiting) return;
  const used = [...(held ?? []), ...(pending ?? [])].map(({ name }) => name);
  for (const name of names) if (!used.includes(name)) await caches.delete(name);
}

let cared: Promise<void> | null = null;
const care = () => (cared ??= (async () => {
  await tidy();
  const { mended, lost } = await lookOver(program, await shelf());
  if (mended.length + lost.length > 0) await tell({ tell: "looked over", mended, lost });
})());

worker.addEventListener("install", (event) => event.waitUntil(install()));
worker.addEventListener("activate", (event) => event.waitUntil(worker.clients.claim()));

worker.addEventListener("fetch", (event) => {
  const { request } = event, path = request.method === "GET" ? pathOf(request.url, scope) : null;
  if (path === null || (!(path in program.files) && !isHashed(path))) return;
  event.respondWith(kept(path).then((found) => found ?? fetch(request)));
  if (request.mode !== "navigate") return;
  cared = null;
  event.waitUntil(new Promise((done) => setTimeout(done, LONGEST_OPENING)).then(care));
});

worker.addEventListener("message", (event: ExtendableMessageEvent) => {
  const { say } = event.data as Said;
  if (say === "which version") event.ports[0]?.postMessage(program.version);
  else if (say === "take over") event.waitUntil(worker.skipWaiting());
  else event.waitUntil(care());
});
