import type { inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";

export type HeatView = inferRouterOutputs<AppRouter>["heat"]["view"];
export type LiveHeat = NonNullable<HeatView["heat"]>;
export type HeatLane = LiveHeat["lane"][number];
