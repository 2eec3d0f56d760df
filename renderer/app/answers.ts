import type { inferRouterInputs, inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../electron/api/router.ts";

/** The API's answers, by capability and procedure. */
export type Answers = inferRouterOutputs<AppRouter>;
/** The API's inputs, likewise. */
export type Questions = inferRouterInputs<AppRouter>;
