/** The little of jsdom that pictures and pages need. */
declare module "jsdom" {
  export class JSDOM {
    constructor(html?: string);
    readonly window: { readonly document: Document };
    serialize(): string;
  }
}
