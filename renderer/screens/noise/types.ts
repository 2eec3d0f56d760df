import type { inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";

/** What the door tells of one test's noise. */
export type TestNoise = inferRouterOutputs<AppRouter>["noise"]["get"]["tests"][number];
