import wasm from "@duckdb/duckdb-wasm/dist/duckdb-eh.wasm?url";

/**
 * The engine's code is fetched and compiled from the worker's first moment on, while its script is still being read and the
 * page prepares to ask for it.
 */
const compiled = WebAssembly.compileStreaming(fetch(new URL(wasm, self.location.href)));
// The script asks for the code in its own time; until then a failure is nobody's.
compiled.catch(() => undefined);

Object.assign(globalThis, { fetch: () => Promise.resolve(new Response()) });
Object.assign(WebAssembly, {
  instantiateStreaming: async (_code: Response, imports: WebAssembly.Imports) => {
    const module = await compiled;
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  },
});
