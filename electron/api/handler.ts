import { fetchRequestHandler } from "@trpc/server/adapters/fetch";
import type { Desk } from "./desk.ts";
import type { Role } from "./roles.ts";
import { appRouter } from "./router.ts";

/** The one door: every request for data, from whatever carrier, with the role that the carrier vouches for. */
export type Handle = (request: Request, who: Role) => Promise<Response>;

/** Makes the door of a desk; it answers under the path `/trpc`. `report` hears of faults that are nobody's input. */
export function createHandler(desk: Desk, report: (error: unknown) => void): Handle {
  return function handle(request, who) {
    return fetchRequestHandler({
      endpoint: "/trpc",
      req: request,
      router: appRouter,
      createContext: () => ({ who, desk }),
      onError({ error }) {
        if (error.code === "INTERNAL_SERVER_ERROR") report(error.cause ?? error);
      },
    });
  };
}
