import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import type { Desk } from "./desk.ts";
import type { Role, Who } from "./roles.ts";
import { appRouter } from "./router.ts";

/**
 * The one door: every request for data, from whatever carrier, with the role that the carrier vouches for, and of a
 * station the one test that it may touch (left out or null: every test).
 */
export type Handle = (request: Request, who: Role, station?: Who["station"]) => Promise<Response>;

/** Makes the door of a desk; it answers under the path `/trpc`. `report` hears of faults that are nobody's input. */
export function createHandler(desk: Desk, report: (error: unknown) => void): Handle {
  return function handle(request, who, station = null) {
    return fetchRequestHandler({
      endpoint: "/trpc",
      req: request,
      router: appRouter,
      createContext: () => ({ who, station, desk }),
      onError({ error }) {
        if (error.code === "INTERNAL_SERVER_ERROR") report(error.cause ?? error);
      },
    });
  };
}
