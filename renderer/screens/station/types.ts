import type { inferRouterInputs, inferRouterOutputs } from "@trpc/server";
import type { AppRouter } from "../../../electron/api/router.ts";

type Inputs = inferRouterInputs<AppRouter>["station"];
type Outputs = inferRouterOutputs<AppRouter>["station"];

export type StationView = Outputs["view"];
export type QueuePlace = StationView["queue"][number];
export type RecentAttempt = StationView["recent"][number];
export type AttemptView = RecentAttempt["attempt"];
export type Person = QueuePlace["who"];
export type Found = Outputs["find"];
export type Entry = Inputs["enter"];
export type Told = NonNullable<Extract<Outputs["enter"], { outcome: "saved" }>["told"]>;
