import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import type { Desk } from "./desk.ts";
import type { Role, Who } from "./roles.ts";
import { appRouter } from "./router.ts";

/**
 * The one door: every request for data, from whatever carrier, with the role that the carrier vouches for, and of a
 * station the one test that it may touch (left out or null: every test).
 */
export type Handle = (request: Request, who: Role, station?: Who["station"]) => Promise<Response>;

/** What a page may ask at once. The largest that one sends is 200 taps, some 50 KB; sheets and bundles bound themselves. */
const most = { calls: 100, jsonBytes: 1024 * 1024 };

/** Makes the door of a desk; it answers under the path `/trpc`. `report` hears of faults that are nobody's input. */
export function createHandler(desk: Desk, report: (error: unknown) => void): Handle {
  return function handle(request, who, station = null) {
    return fetchRequestHandler({
      endpoint: "/trpc",
      req: bounded(request),
      maxBatchSize: most.calls,
      router: appRouter,
      createContext: () => ({ who, station, desk }),
      onError({ error }) {
        if (error.code === "INTERNAL_SERVER_ERROR") report(error.cause ?? error);
      },
    });
  };
}

/** The same request, whose JSON breaks off when it is longer than anything that a page sends. */
function bounded(request: Request): Request {
  const isJson = (request.headers.get("content-type") ?? "").startsWith("application/json");
  if (request.body === null || !isJson) return request;
  let length = 0;
  const counted = new TransformStream<Uint8Array, Uint8Array>({
    transform(part, controller) {
      length += part.length;
      if (length > most.jsonBytes) throw new RangeError("a request that is too long");
      controller.enqueue(part);
    },
  });
  const init = { body: request.body.pipeThrough(counted), duplex: "half" as const };
  return new Request(request, init);
}
