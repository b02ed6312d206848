/**
 * What the page itself may do: run and fetch only what came from this address. `blob:` and `data:` pictures are the
 * owner's own charts on their way to a file.
 */
export const DOCUMENT_POLICY = [
  "default-src 'none'",
  "script-src 'self'",
  "worker-src 'self'",
  "connect-src 'self'",
  "style-src 'self'",
  "img-src 'self' data: blob:",
  "font-src 'self'",
  "manifest-src 'self'",
  "base-uri 'none'",
  "form-action 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  // Svelte's policy is for the markup compiled into its own templates; the default one is in src/ui/own-scripts.ts.
  "trusted-types default svelte-trusted-html",
].join("; ");

/** A worker loaded by its address answers to the policy of its own script, not to the page's. */
export const WORKER_POLICY = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'";

/** What the app keeps of itself for use without a network is fetched by this script; it runs nothing else. */
const SERVICE_WORKER = "service-worker.js";
export const SERVICE_WORKER_POLICY = "default-src 'none'; connect-src 'self'";

/** @param {string} path */
function policyFor(path) {
  if (path === SERVICE_WORKER) return SERVICE_WORKER_POLICY;
  return path.startsWith("workers/") ? WORKER_POLICY : DOCUMENT_POLICY;
}

const SWITCHED_OFF = [
  "accelerometer", "autoplay", "camera", "display-capture", "encrypted-media",
  "fullscreen", "gamepad", "geolocation", "gyroscope", "hid", "identity-credentials-get", "idle-detection",
  "local-fonts", "magnetometer", "microphone", "midi", "payment", "picture-in-picture", "publickey-credentials-create",
  "publickey-credentials-get", "screen-wake-lock", "serial", "storage-access", "usb", "window-management",
  "xr-spatial-tracking",
];

const EVERYWHERE = {
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "no-referrer",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Permissions-Policy": SWITCHED_OFF.map((feature) => `${feature}=()`).join(", "),
};

/** @type {Readonly<Record<string, string>>} */
const KINDS = {
  css: "text/css; charset=utf-8",
  csv: "text/csv; charset=utf-8",
  gz: "application/gzip",
  html: "text/html; charset=utf-8",
  ico: "image/x-icon",
  js: "text/javascript; charset=utf-8",
  json: "application/json; charset=utf-8",
  mjs: "text/javascript; charset=utf-8",
  png: "image/png",
  svg: "image/svg+xml",
  txt: "text/plain; charset=utf-8",
  wasm: "application/wasm",
  webmanifest: "application/manifest+json",
  woff2: "font/woff2",
};

/**
 * The kind of a file by the ending of its name.
 *
 * @param {string} path
 * @example
 * contentType("assets/engine-Bq3kfP0_.wasm"); // => "application/wasm"
 */
export function contentType(path) {
  return KINDS[path.slice(path.lastIndexOf(".") + 1).toLowerCase()] ?? "application/octet-stream";
}

/**
 * Whether a path carries a content hash as the build writes it (`name-Bq3kfP0_.ext`), so that it may be kept for ever.
 *
 * @param {string} path
 */
export const isHashed = (path) => /^(assets|workers)\/.*-[\w-]{8}\.\w+$/.test(path);

/**
 * Headers of an answer that do not depend on the request.
 *
 * @param {string} path relative to the served folder, with `/`; empty for an answer that is no file
 * @returns {Record<string, string>}
 */
export function headersFor(path) {
  return {
    ...EVERYWHERE,
    "Content-Security-Policy": policyFor(path),
    "Cache-Control": isHashed(path) ? "public, max-age=31536000, immutable" : "no-cache",
    "Content-Type": path === "" ? "text/plain; charset=utf-8" : contentType(path),
  };
}
