import type { inferRouterInputs, inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../electron/api/router.ts";

/** What the door answers, by capability and procedure. */
export type Answers = inferRouterOutputs<AppRouter>;
/** What it is asked, likewise. */
export type Questions = inferRouterInputs<AppRouter>;
