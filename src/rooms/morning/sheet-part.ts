import { hashOf } from "../../ui/url-state.ts";

/** One sentence of the sheet; its figure leads to the evidence. */
export interface Item {
  readonly before: string;
  /** The figure, as a link. */
  readonly figure: string;
  readonly href: string;
  readonly after: string;
  /** Why, on a line of its own below; "" for none. */
  readonly why: string;
}

/** A part of the sheet. Something to do has a box to tick on paper. */
export interface Part {
  readonly title: string;
  readonly to_do: boolean;
  readonly items: readonly Item[];
  /** Said where there is no item. */
  readonly nothing: string;
  /** What changed since the last look; "" for nothing. */
  readonly changed: string;
  /** Where the whole of it is. */
  readonly more: { readonly words: string; readonly href: string };
}

/** The address of a room with what is chosen there. */
export const linkTo = (slug: string, chosen: Readonly<Record<string, string>> = {}): string =>
  hashOf({ slug, query: new URLSearchParams(chosen).toString() });

export const capital = (text: string): string => text.replace(/^./, (letter) => letter.toUpperCase());
