import { createServer } from "node:http";
import type { Server } from "node:http";
import type { BrowserContext } from "playwright-core";

/** What a page did that a guarded page must not do; each list holds one line a deed. */
export interface Seen {
  /** Requests to another origin, as the page and its workers asked for them. */
  left: string[];
  /** Hosts that any part of the browser tried to reach besides the app's server, as the network saw it. */
  reached: string[];
  console: string[];
  errors: string[];
  /** Broken Content-Security-Policy, of the page or of a worker. */
  policy: string[];
}

export const nothingSeen = (): Seen => ({ left: [], reached: [], console: [], errors: [], policy: [] });

/** Fills `seen` with all that the pages and workers of `context` do from now on. */
export function watch(context: BrowserContext, origin: string, seen: Seen): void {
  context.on("request", (request) => {
    const url = new URL(request.url());
    if (url.origin !== origin && !["data:", "blob:"].includes(url.protocol)) seen.left.push(`${request.method()} ${url.href}`);
  });
  context.on("console", (message) => seen.console.push(`${message.type()}: ${message.text()}`));
  context.on("weberror", (error) => seen.errors.push(error.error().message));
}

/** One line for a report of broken policy as browsers post it. */
export function policyLine(report: string): string {
  const { "document-uri": page, "effective-directive": rule, "blocked-uri": what } = JSON.parse(report)["csp-report"];
  return `${rule} blocked ${what} on ${page}`;
}

/**
 * The domains that Chromium and Chrome call for themselves, with any page or none (sign-in, updates, hints, time); which hosts
 * of them differs by version, so they are told by their endings. What the app's own page or worker asks of them still
 * shows in `left` and `policy`.
 */
const BROWSERS_OWN = /(^|\.)(google|googleapis|gvt1|gvt2|gstatic|googleusercontent)\.com$/;

/**
 * A proxy that lets nothing through and writes down the host of each attempt. The browser is told to use it for
 * everything but the app's own server, so it also sees what page events do not show.
 */
export async function wall(onAttempt: (host: string) => void): Promise<{ server: Server; port: number }> {
  const note = (host: string) => { if (!BROWSERS_OWN.test(host.replace(/:\d+$/, ""))) onAttempt(host); };
  const server = createServer((request, response) => {
    note(new URL(request.url ?? "", "http://unknown/").host);
    response.writeHead(403).end();
  });
  server.on("connect", (request, socket) => {
    note(request.url ?? "unknown");
    // A browser that is killed resets its connections; a socket handed over here has nobody else to hear of it.
    socket.on("error", () => socket.destroy());
    socket.end("HTTP/1.1 403 Forbidden\r\n\r\n");
  });
  await new Promise<void>((done) => server.listen(0, "127.0.0.1", done));
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("The wall has no address.");
  return { server, port: address.port };
}
