import type { inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";

/** What the overview of a day tells. */
export type Overview = inferRouterOutputs<AppRouter>["day"]["overview"];
