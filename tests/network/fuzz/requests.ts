import { appRouter } from "../../../electron/api/router.ts";
import { address } from "../table.ts";

/** Chance that repeats, in [0, 1). */
export type Chance = () => number;

/** A request to send: its bytes, and what it is made of, for whoever reads of a failure. */
export interface Made {
  readonly bytes: Buffer;
  readonly about: string;
}

const procedures = Object.keys(appRouter._def.procedures);
const methods = [
  ...Array.from({ length: 12 }, () => ["GET", "POST"]).flat(),
  ...["HEAD", "PUT", "OPTIONS", "CONNECT", "G\u00c9T", ""],
];
const paths = [
  ...[
    "/",
    "/index.html",
    "/join.html",
    "/assets/boot-1a2b3c4d.js",
    "/assets/",
    "/../index.html",
    "/%2e%2e/x",
    "//",
    "*",
  ],
  ...[
    "/join/ask",
    "/join/wait",
    "/device/here",
    "/device/heard",
    "/join/ask/",
    "/device",
    "/trpc",
    "/trpc/",
    "/trpc/changes/x",
  ],
  ...[
    "/trpc/board.view?batch=1&input=%7B%7D",
    `/trpc/${"board.view,".repeat(200)}board.view`,
    `/${"a".repeat(13_000)}`,
  ],
];
const bodies = [
  ...["", "{}", "null", "[]", "{", '{"code":"AAAAAAAA","name":"x"}', '{"code":1,"name":[]}', '{"ask":"x"}'],
  ...[
    '{"waiting":0,"battery":null}',
    '{"waiting":-1}',
    '{"__proto__":{"role":"organiser"}}',
    '{"test":"core"}',
  ],
  ...['{"hidden":false}', `"${"x".repeat(70_000)}"`, `${"[".repeat(5_000)}`, "\u0000\u0001", "a=b&c=d"],
];
const types = [
  "application/json",
  "application/json; charset=utf-8",
  "text/plain",
  "multipart/form-data; boundary=x",
  "",
];
/** Mostly as the protocol wants it. */
const breaks = [...Array.from({ length: 30 }, () => "\r\n"), "\n", "\r"];

function pick<Item>(chance: Chance, from: readonly Item[]): Item {
  const item = from[Math.floor(chance() * from.length)];
  if (item === undefined) throw new Error("There is nothing to pick from.");
  return item;
}

/** Makes a request: most of it as our own pages send it, and something of it spoiled. */
export function makeRequest(chance: Chance, origin: string, port: number, cookies: readonly string[]): Made {
  const odd = (usual: string, ...others: readonly string[]) =>
    chance() < 0.92 ? usual : pick(chance, others);
  const method = pick(chance, methods);
  const path = chance() < 0.6 ? `/trpc/${pick(chance, procedures)}?input=%7B%7D` : pick(chance, paths);
  const body = method === "GET" && chance() < 0.9 ? "" : pick(chance, bodies);
  const ending = pick(chance, breaks);
  const host = odd(`${address}:${port}`, "evil.example", "", `${address}:${port}, evil.example`, "localhost");
  const headers = [
    `Host: ${host}`,
    ...(chance() < 0.8 ? ["Connection: close"] : []),
    `Cookie: ${pick(chance, cookies)}`,
    ...(method === "GET" && chance() < 0.8
      ? []
      : [`Origin: ${odd(origin, "https://evil.example", "null", "")}`]),
    ...(chance() < 0.5 ? [`Sec-Fetch-Site: ${odd("same-origin", "cross-site", "none")}`] : []),
    ...(body === "" ? [] : [`Content-Type: ${odd("application/json", ...types)}`]),
    ...framing(chance, body),
    ...(chance() < 0.1
      ? [pick(chance, ["Host: evil.example", "Expect: 100-continue", "Upgrade: websocket", "X: \u0000"])]
      : []),
  ];
  const payload = headers.includes("Transfer-Encoding: chunked") ? chunked(body) : body;
  const text = `${method} ${path} HTTP/${odd("1.1", "1.0", "2.0", "1.2")}${ending}${headers.join(ending)}${ending}${ending}${payload}`;
  const bytes = Buffer.from(text, "latin1");
  return { bytes: chance() < 0.2 ? spoil(chance, bytes) : bytes, about: JSON.stringify(text.slice(0, 300)) };
}

function framing(chance: Chance, body: string): string[] {
  const length = Buffer.byteLength(body, "latin1");
  const kind = chance();
  if (kind < 0.75) return length === 0 ? [] : [`Content-Length: ${length}`];
  if (kind < 0.85) return ["Transfer-Encoding: chunked"];
  if (kind < 0.9) return [`Content-Length: ${length}`, "Transfer-Encoding: chunked"];
  return [
    `Content-Length: ${pick(chance, ["-1", "0", "1", "99999999999999999999", "0x10", "4, 4", String(length + 3)])}`,
  ];
}

function chunked(body: string): string {
  const size = Buffer.byteLength(body, "latin1").toString(16);
  return body === "" ? "0\r\n\r\n" : `${size}\r\n${body}\r\n0\r\n\r\n`;
}

/** Flips, drops, doubles or moves bytes. */
function spoil(chance: Chance, bytes: Buffer): Buffer {
  const at = Math.floor(chance() * bytes.length);
  const end = Math.min(bytes.length, at + 1 + Math.floor(chance() * 20));
  const kind = chance();
  if (kind < 0.4) {
    const flipped = Buffer.from(bytes);
    flipped[at] = (flipped[at] ?? 0) ^ (1 << Math.floor(chance() * 8));
    return flipped;
  }
  const [before, part, after] = [bytes.subarray(0, at), bytes.subarray(at, end), bytes.subarray(end)];
  if (kind < 0.6) return Buffer.concat([before, after]);
  if (kind < 0.8) return Buffer.concat([before, part, part, after]);
  return Buffer.concat([before, after, part]);
}
