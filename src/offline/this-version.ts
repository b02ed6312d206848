/**
 * Version of the page that is open, `0.1.0 (3fa9c1d2)`: that of `package.json`, and the first digits of the hash of all it was built
 * from. Null while it runs from its sources, as in `npm run dev`.
 */
export function thisVersion(): string | null {
  return globalThis.document?.querySelector<HTMLMetaElement>("meta[name=version]")?.content || null;
}
