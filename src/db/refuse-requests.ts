/** The engine asks for extensions and remote files with a blocking request that no policy of the page reaches. */
class NothingThere {
  readonly readyState = 4;
  readonly status = 404;
  readonly statusText = "Not Found";
  readonly response = null;
  readonly responseText = "";
  responseType = "";
  open(): void {}
  overrideMimeType(): void {}
  setRequestHeader(): void {}
  getResponseHeader(): null {
    return null;
  }
  getAllResponseHeaders(): string {
    return "";
  }
  send(): void {}
  abort(): void {}
}

// The packaged engine prints every failed statement although it also answers with it.
Object.assign(globalThis, { XMLHttpRequest: NothingThere });
Object.assign(console, { log: () => undefined });

// The engine starts its code in promises nobody awaits: without this a refused start is a silence without end.
addEventListener("unhandledrejection", (event) => {
  setTimeout(() => {
    throw event.reason;
  });
});
