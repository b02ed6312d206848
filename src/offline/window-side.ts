import type { Said } from "./messages.ts";
import { nameOf } from "./program.ts";

/** Answers take a moment; one that is not there by then will not come. */
const PATIENCE = 15_000;

const within = (milliseconds: number): Promise<null> => new Promise((done) => setTimeout(() => done(null), milliseconds));

export const say = (worker: ServiceWorker, said: Said, ports: Transferable[] = []): void => worker.postMessage(said, ports);

/** The version a service worker has, or null when it does not answer. */
export function versionOf(worker: ServiceWorker): Promise<string | null> {
  const { port1, port2 } = new MessageChannel();
  const answered = new Promise<string>((done) => { port1.onmessage = ({ data }: MessageEvent<string>) => done(data); });
  say(worker, { say: "which version" }, [port2]);
  return Promise.race([answered, within(PATIENCE)]);
}

/** Lets the newer version answer for the app from now on. */
export async function takenOver(container: ServiceWorkerContainer, waiting: ServiceWorker): Promise<void> {
  const changed = new Promise((done) => container.addEventListener("controllerchange", done, { once: true }));
  say(waiting, { say: "take over" });
  await Promise.race([changed, within(PATIENCE)]);
}

/** Keeps this version's files in the browser's cache for as long as this window is open. */
export function useVersion(version: string, locks: LockManager | undefined = navigator.locks): void {
  void locks?.request(nameOf(version), { mode: "shared" }, () => new Promise(() => undefined));
}
