import { ScreenChoice } from "./screen-choice.svelte.ts";

/** Sets a word on the page that the style sheet goes by; the first choice leaves none. */
const marked = (name: string, without: string) => (word: string): void => {
  if (word === without) document.documentElement.removeAttribute(`data-${name}`);
  else document.documentElement.setAttribute(`data-${name}`, word);
};

/** Light or dark paper: as the device is set, or the reader's own choice. */
export const paper = new ScreenChoice("saltbench:paper", ["device", "light", "dark"], marked("paper", "device"));

/** How many times as large as usual the text stands. */
export const TEXT_SIZES = { usual: 1, larger: 1.2, largest: 1.5 } as const;
export const text_size = new ScreenChoice("saltbench:text", ["usual", "larger", "largest"], marked("text", "usual"));

const page_rule = typeof CSSStyleSheet === "undefined" ? null : new CSSStyleSheet();

/** Paper that sheets are printed on; "printer" leaves it to the print window. */
export const print_paper = new ScreenChoice("saltbench:print-paper", ["printer", "A4", "Letter"], (word) => {
  // A page's size cannot be set through a class on the page, only by a rule of its own.
  page_rule?.replaceSync(word === "printer" ? "" : `@page { size: ${word.toLowerCase()} portrait; }`);
  if (page_rule && !document.adoptedStyleSheets.includes(page_rule)) document.adoptedStyleSheets.push(page_rule);
});

/** Whether the first steps are shown in an empty shop. */
export const first_steps = new ScreenChoice("saltbench:first-steps", ["shown", "put away"], () => undefined);

export const SCREEN_CHOICES = [paper, text_size, print_paper, first_steps];
