import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import type { Caller, Role } from "../domain/lock/roles.ts";
import { sheetLimits } from "../domain/sheets/limits.ts";
import type { Desk } from "./door/desk.ts";
import { appRouter } from "./router.ts";

/**
 * The one door: every request for data, from whatever carrier, with the role that the carrier vouches for, and of a
 * station the one test that it may touch (left out or null: every test).
 */
export type Handle = (request: Request, who: Role, station?: Caller["station"]) => Promise<Response>;

/** What a page may ask at once. */
const mostCalls = 100;

/**
 * The kinds of body that there are, and how long each may be. The longest JSON that a page sends is 200 taps, some 50 KB.
 * Bytes are sheets and bundles, which have bounds and sentences of their own; this one is for whatever forgets them.
 */
const mostBytes: Readonly<Record<string, number>> = {
  "application/json": 1024 * 1024,
  "application/octet-stream": sheetLimits.bytes,
};

/** Makes the door of a desk; it answers under the path `/trpc`. `report` hears of faults that are nobody's input. */
export function createHandler(desk: Desk, report: (error: unknown) => void): Handle {
  return function handle(request, who, station = null) {
    return fetchRequestHandler({
      endpoint: "/trpc",
      req: bounded(request),
      maxBatchSize: mostCalls,
      router: appRouter,
      createContext: () => ({ who, station, desk }),
      onError({ error }) {
        if (error.code === "INTERNAL_SERVER_ERROR") report(error.cause ?? error);
      },
    });
  };
}

/** The same request with a body that breaks off when it is too long; without its body where that is of no known kind. */
function bounded(request: Request): Request {
  const { body, url, method, signal } = request;
  if (body === null) return request;
  const [type = ""] = (request.headers.get("content-type") ?? "").toLowerCase().split(";", 1);
  const most = mostBytes[type.trim()];
  // Not even looked at: what says neither JSON nor bytes is then refused as nothing that can be read.
  if (most === undefined) return new Request(url, { method, signal });
  const counted = ReadableStream.from(upTo(most, body));
  return new Request(request, { body: counted, duplex: "half" });
}

/** The part that goes over is still handed on, so that whoever has a smaller bound refuses with the better sentence. */
async function* upTo(most: number, body: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  let length = 0;
  for await (const part of body) {
    yield part;
    length += part.length;
    if (length > most) throw new RangeError("a request that is too long");
  }
}
