import type { Answers } from "../../../app/answers.ts";

export type ToRead = Answers["study"]["toRead"];
export type StudyToRead = NonNullable<ToRead["study"]>;
