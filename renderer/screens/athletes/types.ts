import type { inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";

type Outputs = inferRouterOutputs<AppRouter>["people"];

export type Listed = Outputs["list"]["people"][number];
export type List = Outputs["list"];
export type AthletePage = Outputs["get"];
export type Series = AthletePage["series"][number];
