import type { Answers, Questions } from "../../app/answers.ts";

type Inputs = Questions["station"];
type Outputs = Answers["station"];

export type StationView = Outputs["view"];
export type QueuePlace = StationView["queue"][number];
export type RecentAttempt = StationView["recent"][number];
export type AttemptView = RecentAttempt["attempt"];
export type StationPerson = QueuePlace["who"];
export type Found = Outputs["find"];
export type Entry = Inputs["enter"];
export type Told = NonNullable<Extract<Outputs["enter"], { outcome: "saved" }>["told"]>;
