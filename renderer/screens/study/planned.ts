import { mostDaysApart, type StudyKind } from "../../../electron/domain/study/shape.ts";
import { protocolOf, type TestCode } from "../../../electron/domain/tests/registry.ts";
import type { DayWithMarks } from "./types.ts";

/** A plan as it is typed. Ids of days are 0 for none of them. */
export interface TypedPlan {
  readonly kind: StudyKind;
  readonly test: TestCode;
  readonly variant: string;
  readonly dayId: number;
  /** Whether the day's own results are the first judge's readings: those that this judge entered. */
  readonly ofDay: boolean;
  /** Initials; empty ones count for nobody. */
  readonly judges: readonly string[];
  readonly secondDayId: number;
  /** Dates of visits that are no day of the program. */
  readonly dates: readonly [string, string];
  readonly aim: string;
}

/** A part of the form. */
export interface PlanPartProps {
  readonly plan: TypedPlan;
  readonly days: readonly DayWithMarks[];
  readonly change: (more: Partial<TypedPlan>) => void;
}

/** Fewest athletes that a study is worth planning for, at first. */
const firstAim = 20;

/** Returns the plan that the form begins with: judges of push-ups, on the newest day. */
export function firstPlan(days: readonly DayWithMarks[], today: string): TypedPlan {
  const [newest] = days;
  return {
    ...{ kind: "judges", test: "push-up", variant: protocolOf("push-up").variants[0] ?? "" },
    ...{ dayId: newest?.id ?? 0, ofDay: newest !== undefined, judges: ["", "", ""], secondDayId: 0 },
    ...{ dates: [today, aWeekAfter(newest?.date ?? today)], aim: String(firstAim) },
  };
}

/** Returns the date seven days later. */
export function aWeekAfter(date: string): string {
  return new Date(Date.parse(date) + 7 * 86_400_000).toISOString().slice(0, 10);
}

type SentSeries =
  | { from: "marks"; dayId: number; judge?: string }
  | { from: "judge"; judge: string }
  | { from: "visit"; date: string };

/** Returns who entered results of the plan's day in its test, with how many; who entered most comes first. */
export function judgesOfDay({ dayId, test, variant }: TypedPlan, days: readonly DayWithMarks[]) {
  const marks = days.find(({ id }) => id === dayId)?.marks ?? [];
  return marks.find((each) => each.test === test && each.variant === variant)?.judges ?? [];
}

/** Returns the first judge of a day's results: the one who was chosen or typed, else who entered most of them. */
export function firstJudge(plan: TypedPlan, days: readonly DayWithMarks[]): string {
  const entered = judgesOfDay(plan, days).map(({ judge }) => judge);
  const [typed = ""] = plan.judges;
  return entered.length === 0 || entered.includes(typed) ? typed : (entered[0] ?? "");
}

/** Returns the series of a plan as the API takes them. */
export function seriesOf(plan: TypedPlan, days: readonly DayWithMarks[]): SentSeries[] {
  if (plan.kind === "visits") {
    return [visit(plan.dayId, plan.dates[0]), visit(plan.secondDayId, plan.dates[1])];
  }
  const isOfDay = plan.ofDay && plan.dayId !== 0;
  const judges = plan.judges.slice(isOfDay ? 1 : 0).filter((judge) => judge.trim() !== "");
  const own: SentSeries[] = isOfDay
    ? [{ from: "marks", dayId: plan.dayId, judge: firstJudge(plan, days) }]
    : [];
  return [...own, ...judges.map((judge): SentSeries => ({ from: "judge", judge }))];
}

function visit(dayId: number, date: string): SentSeries {
  return dayId === 0 ? { from: "visit", date } : { from: "marks", dayId };
}

/** Returns the days that can be the second visit after the first. */
export function secondDays(days: readonly DayWithMarks[], { dayId }: TypedPlan): readonly DayWithMarks[] {
  const first = days.find(({ id }) => id === dayId);
  if (first === undefined) return days;
  return days.filter(({ date }) => {
    const apart = (Date.parse(date) - Date.parse(first.date)) / 86_400_000;
    return apart > 0 && apart <= mostDaysApart;
  });
}
