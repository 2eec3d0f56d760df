import type { Answers } from "../../app/answers.ts";

type Outputs = Answers["study"];

export type StudyView = Outputs["get"];
export type StudyList = Outputs["list"];
export type StudyLine = StudyList["studies"][number];
export type DayWithMarks = StudyList["days"][number];
export type Series = StudyView["series"][number];
export type StudyRow = StudyView["rows"][number];
export type Result = NonNullable<StudyView["result"]>;
export type Amount = Result["mean"];
export type Within = { readonly value: Amount; readonly low: Amount; readonly high: Amount };
export type Looked = Outputs["lookAt"];

/** A series that readings are brought for, with its name in words. */
export interface SeriesProps {
  readonly study: StudyView;
  readonly series: Series;
  readonly name: string;
}

/** A study and what it has found. */
export interface ResultProps {
  readonly study: StudyView;
  readonly result: Result;
}
