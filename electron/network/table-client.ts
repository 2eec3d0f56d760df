import type { IncomingMessage } from "node:http";
import { request as httpsRequest } from "node:https";
import { Readable } from "node:stream";
import { hostOf } from "./addresses.ts";
import { doorHeaders, textOf } from "./carry.ts";
import { mostBodyBytes } from "./guard.ts";
import { PinnedAgent, type PinnedTable } from "./pinned.ts";

/** How long an answer beside the door is waited for, in ms. */
const patienceMs = 8_000;
/** Longest answer beside the door, in bytes: a few words. */
const longestWord = 64 * 1024;
/** The table's ping comes every 10 s: a stream that says nothing for so long has no table behind it, in ms. */
const silenceMs = 35_000;

/** The kinds of answer that a page gets from the table: data, and the stream of changes. */
const carriedTypes = ["application/json", "text/event-stream"];

/** An answer of the table beside the door. */
interface Told {
  readonly status: number;
  /** What it says, read as JSON; null for an answer without words. */
  readonly body: unknown;
  /** The `Set-Cookie` header with which it gives a token. */
  readonly cookie: string | undefined;
}

/** The way from this program to the one table that somebody named; nothing else is ever connected to. */
export interface TableClient {
  /** Sends something beside the door. Rejects when no answer comes, with OtherKey when somebody else's key does. */
  tell(path: string, body: object, token?: string): Promise<Told>;
  /** Sends a page's request for data on, as this device. Rejects likewise. */
  forward(request: Request, token: string): Promise<Response>;
  /** Returns the SHA-256 of the key that the table proved to hold, in hexadecimal digits; null before the first answer. */
  keyHash(): string | null;
  /** Ends every connection to the table. */
  end(): void;
}

interface Sent {
  readonly method: string;
  readonly path: string;
  readonly headers: Readonly<Record<string, string>>;
  readonly body: Uint8Array | null;
  readonly signal: AbortSignal;
}

export function createTableClient(table: PinnedTable): TableClient {
  const agent = new PinnedAgent(table);
  const over = new AbortController();
  const host = hostOf(table.address, table.port);

  function send({ method, path, headers, body, signal }: Sent): Promise<IncomingMessage> {
    return new Promise((resolve, reject) => {
      const request = httpsRequest(
        {
          ...{ agent, host: table.address, port: table.port, method, path },
          headers: { ...headers, host, origin: `https://${host}` },
          signal: AbortSignal.any([signal, over.signal]),
        },
        resolve,
      );
      request.on("error", reject);
      request.end(body ?? undefined);
    });
  }

  async function tell(path: string, body: object, token?: string): Promise<Told> {
    const headers = { "content-type": "application/json", ...bearer(token) };
    const bytes = Buffer.from(JSON.stringify(body));
    const signal = AbortSignal.timeout(patienceMs);
    const answer = await send({ method: "POST", path, headers, body: bytes, signal });
    const cookie = answer.headers["set-cookie"]?.[0];
    return { status: answer.statusCode ?? 0, body: await wordOf(answer), cookie };
  }

  async function forward(request: Request, token: string): Promise<Response> {
    const { pathname, search } = new URL(request.url);
    const body = request.method === "POST" ? new Uint8Array(await request.arrayBuffer()) : null;
    if (body !== null && body.length > mostBodyBytes) return new Response(null, { status: 413 });
    const answer = await send({
      ...{ method: request.method, path: `${pathname}${search}`, body, signal: request.signal },
      headers: { ...headersOf(request), ...bearer(token) },
    });
    return responseOf(answer);
  }

  return {
    tell,
    forward,
    keyHash: agent.provedKey,
    end() {
      over.abort();
      agent.destroy();
    },
  };
}

function bearer(token: string | undefined): Record<string, string> {
  return token === undefined ? {} : { authorization: `Bearer ${token}` };
}

function headersOf(request: Request): Record<string, string> {
  const found = doorHeaders.map((name) => [name, request.headers.get(name)] as const);
  return Object.fromEntries(found.filter((header): header is [string, string] => header[1] !== null));
}

/** Hands an answer on as it comes. Its headers are this program's own, but for what kind of data it is. */
function responseOf(answer: IncomingMessage): Response {
  const type = answer.headers["content-type"] ?? "";
  const known = carriedTypes.some((each) => type.startsWith(each));
  const { statusCode: status = 502 } = answer;
  if (!known) {
    answer.resume();
    return new Response(null, { status: status === 200 ? 502 : status });
  }
  answer.setTimeout(silenceMs, () => answer.destroy());
  return new Response(Readable.toWeb(answer) as ReadableStream<Uint8Array>, {
    status,
    headers: { "content-type": type },
  });
}

async function wordOf(answer: IncomingMessage): Promise<unknown> {
  const text = await textOf(answer, longestWord);
  return text === "" ? null : (JSON.parse(text) as unknown);
}
