import { browserLocale, numberFormat } from "../../way-of-writing.ts";
import { date } from "../../ui/format.ts";

/** Ways of writing on offer: one of each kind there is in the languages a shop is likely to know, and its own browser's. */
const LOCALES = ["en-GB", "en-US", "en-AU", "en-CA", "en-NZ", "en-ZA", "en-IN", "da-DK", "de-DE", "de-CH", "es-ES", "fr-FR", "it-IT", "ja-JP", "nl-NL", "nb-NO", "pl-PL", "pt-PT", "pt-BR", "fi-FI", "sv-SE"] as const;

/** How a locale writes, on one day and one number. */
const example = (locale: string): string => `${date("2026-03-14", locale)}, ${numberFormat(locale, 2, 2).format(1234.5)}`;

function named(locale: string): string {
  const name = new Intl.DisplayNames("en", { type: "language", languageDisplay: "standard" }).of(locale);
  return name ?? locale;
}

/**
 * What the owner chooses from: "" follows the browser.
 *
 * @param chosen the locale that is set; it is on the list even where it is none of ours
 */
export function writingWays(chosen: string | null): readonly { readonly value: string; readonly label: string }[] {
  const all = [...new Set<string>([...LOCALES, ...(chosen === null ? [] : [chosen])])];
  return [
    { value: "", label: `As this browser: ${example(browserLocale())}` },
    ...all.map((locale) => ({ value: locale, label: `${named(locale)}: ${example(locale)}` })).sort((a, b) => a.label.localeCompare(b.label, "en")),
  ];
}
