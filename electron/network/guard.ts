import type { IncomingMessage } from "node:http";

/** What the server answers to: its host as a `Host` header has it, and its origin. */
export interface Served {
  readonly host: string;
  readonly origin: string;
}

/** Longest body of a request, in bytes: the longest that a page sends is 200 taps, some 50 KB. */
export const mostBodyBytes = 1024 * 1024;
/** Longest address of a request, in characters: fifty questions in one. */
const longestUrl = 12_000;

/** Headers that say who asks and where a body ends: each may come once. */
const once = [
  "host",
  "origin",
  "cookie",
  "authorization",
  "content-type",
  "content-length",
  "transfer-encoding",
  "sec-fetch-site",
  "last-event-id",
];

/** A rule of the door to the network: the status with which it refuses, and what it refuses. */
type Rule = readonly [status: number, refuses: (request: IncomingMessage, served: Served) => boolean];

const rules: readonly Rule[] = [
  [405, ({ method }) => method !== "GET" && method !== "POST"],
  [400, ({ httpVersion }) => httpVersion !== "1.1"],
  [400, hasTwice],
  // A page of another name that leads here (DNS rebinding) sends that name.
  [421, ({ headers }, { host }) => headers.host !== host],
  [414, ({ url = "" }) => url.length > longestUrl],
  [404, ({ url = "" }) => !isPlainPath(url)],
  [403, isFromElsewhere],
  [400, ({ method, headers }) => method === "GET" && hasBody(headers)],
  [415, ({ method, headers }) => method === "POST" && !isJson(headers["content-type"])],
  [413, ({ headers }) => Number(headers["content-length"] ?? 0) > mostBodyBytes],
];

/** Returns the status with which a request is refused before anything looks into it; null when it is in order. */
export function refusalOf(request: IncomingMessage, served: Served): number | null {
  return rules.find(([, refuses]) => refuses(request, served))?.[0] ?? null;
}

/** Node takes the first of two and says nothing; what stands between here and the device may take the second. */
function hasTwice({ rawHeaders }: IncomingMessage): boolean {
  const names = rawHeaders.filter((_, at) => at % 2 === 0).map((name) => name.toLowerCase());
  return once.some((name) => names.indexOf(name) !== names.lastIndexOf(name));
}

/** No way up, no second spelling of a path, no whole address as proxies take it. */
function isPlainPath(url: string): boolean {
  const path = pathOf(url);
  return /^\/[\w./,%-]*$/.test(path) && !/\/\/|\/\.|%(?!2c)/i.test(path) && !url.includes("#");
}

/** Returns the path of a request's address, undecoded. */
export function pathOf(url: string): string {
  return url.split("?", 1)[0] ?? "";
}

/**
 * What writes must come from our own pages, and browsers say so in `Origin`. Where a browser says from what kind of site
 * a request comes (`Sec-Fetch-Site`, W3C Fetch Metadata), it must be ours, but for a page that a person opens.
 */
function isFromElsewhere({ method, url = "", headers }: IncomingMessage, { origin }: Served): boolean {
  if (headers.origin !== undefined ? headers.origin !== origin : method === "POST") return true;
  const site = headers["sec-fetch-site"];
  if (site === undefined || site === "same-origin") return false;
  const opened = headers["sec-fetch-mode"] === "navigate" && headers["sec-fetch-dest"] === "document";
  return method !== "GET" || !opened || pathOf(url) !== "/";
}

function hasBody(headers: IncomingMessage["headers"]): boolean {
  return headers["transfer-encoding"] !== undefined || Number(headers["content-length"] ?? 0) > 0;
}

function isJson(type: string | undefined): boolean {
  return type?.split(";", 1)[0]?.trim().toLowerCase() === "application/json";
}
