export const PAPERS = ["device", "light", "dark"] as const;
export type PaperChoice = (typeof PAPERS)[number];

const KEY = "saltbench:paper";

/** Browsers that forbid storage throw where they are merely asked for it. */
function stored(): Storage | null {
  try {
    return globalThis.localStorage ?? null;
  } catch (error) {
    if (error instanceof DOMException) return null;
    throw error;
  }
}

/** Light or dark paper: as the device is set, or the reader's own choice, kept outside the records so that it stands at once. */
class Paper {
  choice = $state<PaperChoice>("device");

  /** Takes up the choice of last time. */
  recall(): void {
    const kept = stored()?.getItem(KEY);
    this.choice = PAPERS.find((one) => one === kept) ?? "device";
    this.#show();
  }

  choose(choice: PaperChoice): void {
    this.choice = choice;
    stored()?.setItem(KEY, choice);
    this.#show();
  }

  #show(): void {
    if (this.choice === "device") delete document.documentElement.dataset["paper"];
    else document.documentElement.dataset["paper"] = this.choice;
  }
}

export const paper = new Paper();
