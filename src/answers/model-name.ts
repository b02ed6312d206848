/**
 * Model with its maker, as one name; the address and the headings call a model by it.
 *
 * @example
 * modelName({ maker: "Eldmere", model: "Withy 5" }); // => "Eldmere Withy 5"
 */
export const modelName = (of: { readonly maker: string | null; readonly model: string }): string =>
  of.maker === null || of.maker === "*" ? of.model : `${of.maker} ${of.model}`;
