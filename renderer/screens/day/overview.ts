import type { Answers } from "../../app/answers.ts";

export type Overview = Answers["day"]["overview"];
/** When an open day will end; null for any other day. */
export type DayForecast = Answers["day"]["forecast"];
