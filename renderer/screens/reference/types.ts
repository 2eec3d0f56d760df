import type { inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";

type Outputs = inferRouterOutputs<AppRouter>["reference"];

/** A bundle that is kept. */
export type Kept = Outputs["list"][number];
/** What is in a bundle that was brought and not yet added. */
export type Brought = Outputs["bring"];
export type KeptTest = Kept["tests"][number];
