import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import type { JoinedDevice } from "../domain/devices/place.ts";
import type { Caller, Role } from "../domain/lock/roles.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import type { Desk } from "./door/desk.ts";
import { devicesInTurn } from "./door/turns.ts";
import { appRouter } from "./router.ts";

/**
 * Answers every request for data, from any carrier, with the role that the carrier vouches for and, for a station, the
 * one test that it may touch (left out or null: every test). `device`: the device on the network that asks; without
 * it, a window of this computer does.
 */
export type Handle = (
  request: Request,
  who: Role,
  station?: Caller["station"],
  device?: JoinedDevice,
) => Promise<Response>;

/** Most calls that a page may send at once. */
const mostCalls = 100;

/**
 * The allowed kinds of body, and the longest of each, in bytes. The longest JSON that a page sends is 200 taps, some 50
 * KB. Bytes are sheets and bundles, with limits and sentences of their own; this limit is for code that forgets them.
 */
const mostBytes: Readonly<Record<string, number>> = {
  "application/json": 1024 * 1024,
  "application/octet-stream": sheetLimits.bytes,
};

/** Makes a desk's request handler, under the path `/trpc`. `report` receives faults that no input caused. */
export function createHandler(desk: Desk, report: (error: unknown) => void): Handle {
  return function handle(request, who, station = null, device) {
    // A result that is entered waits for no reading.
    const waits = device !== undefined && request.method === "GET";
    return waits
      ? devicesInTurn(() => answer(request, who, station, device))
      : answer(request, who, station, device);
  };

  function answer(
    request: Request,
    who: Role,
    station: Caller["station"],
    device?: JoinedDevice,
  ): Promise<Response> {
    return fetchRequestHandler({
      endpoint: "/trpc",
      req: bounded(request),
      maxBatchSize: mostCalls,
      router: appRouter,
      createContext: () => ({ who, station, device: device ?? null, desk }),
      onError({ error }) {
        if (error.code === "INTERNAL_SERVER_ERROR") report(error.cause ?? error);
      },
    });
  }
}

/**
 * Returns the request with a body that breaks off when too long; without its body if that is of an unknown kind. JSON is
 * read from the request itself: another request around it would cost as much as reading an entry's answer.
 */
function bounded(request: Request): Request {
  const { body, url, method, signal } = request;
  if (body === null) return request;
  const [type = ""] = (request.headers.get("content-type") ?? "").toLowerCase().split(";", 1);
  const most = mostBytes[type.trim()];
  // Drop it unread: a body that is neither JSON nor bytes is then refused as unreadable.
  if (most === undefined) return new Request(url, { method, signal });
  if (type.trim() === "application/json") return withJson(request, () => jsonUpTo(most, body));
  const counted = ReadableStream.from(upTo(most, body));
  return new Request(request, { body: counted, duplex: "half" });
}

function withJson(request: Request, json: () => Promise<unknown>): Request {
  return Object.defineProperty(request, "json", { value: json });
}

const utf8 = new TextDecoder();

async function jsonUpTo(most: number, body: ReadableStream<Uint8Array>): Promise<unknown> {
  const parts: Uint8Array[] = [];
  for await (const part of upTo(most, body)) parts.push(part);
  return JSON.parse(utf8.decode(Buffer.concat(parts))) as unknown;
}

/** Yields parts up to the limit and the one that exceeds it, so that a smaller limit refuses in its better words. */
async function* upTo(most: number, body: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  let length = 0;
  for await (const part of body) {
    yield part;
    length += part.length;
    if (length > most) throw new RangeError("a request that is too long");
  }
}
