import { unfinished, type Unfinished } from "../ui/unfinished.ts";
import type { Kept } from "./kept-words.ts";
import type { Told } from "./messages.ts";
import { thisVersion } from "./this-version.ts";
import { say, takenOver, useVersion, versionOf } from "./window-side.ts";

/** How often a page that stays open asks for a newer version. */
const ASK_EVERY = 3_600_000;
const LOOK_AGAIN = 100;

/** The program itself on this computer: whether it is kept for use without a network, and whether a newer one is ready. */
export class KeptProgram {
  kept = $state.raw<Kept>("not asked yet");
  /** Version that is ready and is not this page's, else null. */
  newer = $state.raw<string | null>(null);
  /** What the newer version waits for since the owner asked for it, else null. */
  waits_for = $state.raw<Unfinished | null>(null);
  /** Files of the program had changed on the disk; `lost` when they could not be fetched again. */
  damage = $state.raw<"mended" | "lost" | null>(null);
  /** This page's own, null while it runs from its sources. */
  readonly version = thisVersion();
  #registration: ServiceWorkerRegistration | null = null;

  /** Begins to keep the program. Never rejects: see `kept`. */
  async start(container: ServiceWorkerContainer | undefined = globalThis.navigator?.serviceWorker): Promise<void> {
    if (this.version === null) this.kept = "sources";
    else if (!container) this.kept = "forbidden";
    else await this.#register(container, this.version);
  }

  async #register(container: ServiceWorkerContainer, version: string): Promise<void> {
    useVersion(version);
    container.addEventListener("message", ({ data }: MessageEvent<Told>) => this.#hear(data));
    container.addEventListener("controllerchange", () => void this.#look());
    container.startMessages();
    try {
      const registration = (this.#registration = await container.register("service-worker.js", { updateViaCache: "none" }));
      this.#follow(registration);
      // One that is only now being made has just seen every file.
      if (registration.active) say(registration.active, { say: "standing" });
      registration.addEventListener("updatefound", () => this.#follow(registration));
    } catch (error) {
      if (!(error instanceof DOMException || error instanceof TypeError)) throw error;
      this.kept = (await container.getRegistration())?.active ? "yes" : error.name === "TypeError" ? "not fetched" : "forbidden";
    }
    await this.#look();
    // Without a network there is nothing newer to be had.
    setInterval(() => void this.#registration?.update().catch(() => undefined), ASK_EVERY);
  }

  #follow({ installing }: ServiceWorkerRegistration): void {
    installing?.addEventListener("statechange", () => void this.#look());
  }

  #hear(told: Told): void {
    if (told.tell === "looked over") this.damage = told.lost.length > 0 ? "lost" : "mended";
    else if (this.kept !== "yes") this.kept = told.why;
  }

  /** Sees which versions there are now. */
  async #look(): Promise<void> {
    const { active, waiting } = this.#registration ?? {};
    if (active?.state === "activated") this.kept = "yes";
    const next = waiting ?? active, version = next ? await versionOf(next) : null;
    if (version !== null) this.newer = version === this.version ? null : version;
  }

  /**
   * Loads the newer version, after everything that is being written is on the disk. What only the owner can end is
   * left in `waits_for`, and nothing is loaded.
   *
   * @param writing whether records are on their way to the disk
   */
  async loadNewer(writing: () => boolean, load: () => void = () => location.reload()): Promise<void> {
    for (this.waits_for = unfinished(); this.waits_for?.ends === "by itself" || writing(); this.waits_for = unfinished()) {
      await new Promise((done) => setTimeout(done, LOOK_AGAIN));
    }
    if (this.waits_for) return;
    const waiting = this.#registration?.waiting;
    if (waiting) await takenOver(navigator.serviceWorker, waiting);
    load();
  }
}

export const program = new KeptProgram();
