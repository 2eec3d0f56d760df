import { choiceOf, fieldsOf, readKeyed } from "../keyed/keyed.ts";
import { type MarkNews, newsOf } from "../statistics/news.ts";
import type { PlaceBand } from "../statistics/place.ts";
import { endOf } from "../statistics/place-ends.ts";
import { placeIn } from "../statistics/place-in-group.ts";
import { RowRefused } from "../tests/cells.ts";
import type { Field, FieldErrors } from "../tests/fields.ts";
import type { LengthUnit, Mark, Plausibility } from "../tests/protocol.ts";
import type { Typed } from "../tests/reading.ts";
import { definitionOf, parseAttempt, protocolOf, refusalOf, type TestCode } from "../tests/registry.ts";
import type { EitherTime } from "../units.ts";
import type { Sentence } from "../words.ts";
import { everybody, type GroupCategory, type GroupOfMarks } from "./table.ts";

/** Fields that are typed together: one attempt, or several of one slot. */
export interface FieldGroup {
  /** Distinguishes it among those of its test: the option that it is for, or "". */
  readonly name: string;
  /** What is chosen for it beforehand: a direction. */
  readonly given: Typed;
  readonly fields: readonly Field[];
}

/**
 * Returns the fields by which somebody looks up a whole result at once: a test of two attempts has both. Fields that Enter
 * passes over (body weight) are left out, as on paper.
 */
export function fieldGroupsOf(test: TestCode, parameters: unknown, typed: Typed): FieldGroup[] {
  const { keyed, protocol } = definitionOf(test);
  const choice = choiceOf(test);
  const groupOf = (name: string, given: Typed): FieldGroup => ({
    ...{ name, given },
    fields: fieldsOf(test, { ...typed, ...given }, protocol.slotSize(parameters)).filter(
      ({ aside }) => aside !== true,
    ),
  });
  if (choice === null || keyed.slot === undefined) return [groupOf("", {})];
  return choice.options.map((option) => groupOf(option, { [choice.name]: option }));
}

/** What came of one test's fields. */
export type LookedUp =
  | { readonly state: "empty" }
  /** Errors by group and field, or of all of it (`whole`). */
  | {
      readonly state: "wrong";
      readonly errors: Readonly<Record<string, FieldErrors>>;
      readonly whole?: Sentence;
    }
  | { readonly state: "either"; readonly group: string; readonly field: string; readonly times: EitherTime }
  /** `doubts`: what the station would ask "sure?" about. */
  | { readonly state: "read"; readonly mark: Mark; readonly doubts: readonly Sentence[] };

/**
 * Reads what was typed of one test, as the station reads it: the fields, the schema, what can be believed, the score.
 * @param typed by group; the choice of the test, where one stands before the groups, is in each
 */
export function lookUp(
  test: TestCode,
  parameters: unknown,
  groups: readonly FieldGroup[],
  typed: Readonly<Record<string, Typed>>,
  lengths: LengthUnit,
): LookedUp {
  const own = (name: string) => typed[name] ?? {};
  if (groups.every(({ name, fields }) => fields.every((field) => isBlank(own(name)[field.name])))) {
    return { state: "empty" };
  }
  const read = groups.map(({ name, given }) => ({
    name,
    keyed: readKeyed(test, parameters, { ...own(name), ...given }, lengths),
  }));
  const wrong = read.flatMap(({ name, keyed }) => ("errors" in keyed ? [[name, keyed.errors] as const] : []));
  if (wrong.length > 0) return { state: "wrong", errors: Object.fromEntries(wrong) };
  for (const { name, keyed } of read) {
    if ("either" in keyed)
      return { state: "either", group: name, field: keyed.either.field, times: keyed.either };
  }
  return judged(
    test,
    parameters,
    read.flatMap(({ keyed }) => ("seen" in keyed ? keyed.seen : [])),
  );
}

function isBlank(text: string | undefined): boolean {
  return (text ?? "").trim() === "";
}

function judged(test: TestCode, parameters: unknown, seen: readonly unknown[]): LookedUp {
  const protocol = protocolOf(test);
  const attempts: unknown[] = [];
  const judgements: Plausibility[] = [];
  for (const each of seen) {
    const { data, error } = parseAttempt(test, each);
    if (error !== undefined) return { state: "wrong", errors: {}, whole: refusalOf(error) };
    attempts.push(data);
    judgements.push(protocol.plausibility(parameters, data));
  }
  const refused = judgements.find((each) => each.level === "refuse");
  if (refused !== undefined) return { state: "wrong", errors: {}, whole: refused.sentence };
  const doubts = judgements.flatMap((each) => (each.level === "ask" ? [each.sentence] : []));
  return { state: "read", mark: protocol.score(parameters, attempts), doubts };
}

/** Reads a single earlier result, as sheets of past results are read; null where nothing is typed. */
export function readEarlier(
  test: TestCode,
  parameters: unknown,
  text: string,
  lengths: LengthUnit,
): { readonly value: number } | { readonly error: Sentence } | null {
  if (isBlank(text)) return null;
  const { sheet, protocol } = definitionOf(test);
  const unit = protocol.grain.unit === "cm" ? lengths : "";
  try {
    const cells: Readonly<Record<string, string>> = { mark: text.trim(), unit };
    const { seen, value } = sheet.readPast((column) => cells[column] ?? "");
    const { data, error } = parseAttempt(test, seen);
    if (error !== undefined) return { error: refusalOf(error) };
    const believed = protocol.plausibility(parameters, data);
    if (believed.level === "refuse") return { error: believed.sentence };
    const mark = protocol.score(parameters, [data]);
    const scored = mark.state === "complete" ? mark.value : undefined;
    return { value: value ?? scored ?? 0 };
  } catch (error) {
    if (error instanceof RowRefused) return { error: error.sentence };
    throw error;
  }
}

/** Compares a result with an earlier one as the station does, in a hall that has no results of its own to judge by. */
export function changeSince(test: TestCode, earlier: number, value: number, date: string): MarkNews {
  return newsOf(test, { date, value }, [{ date, value: earlier }]);
}

/** Whom somebody wants to be compared with. */
export interface Looking {
  readonly category: GroupCategory | null;
  readonly ageBand: string | null;
}

/** A result's place in one group of the table; null where the table has too few results. */
export interface LookedUpPlace {
  /** Which of the two the group shares with whoever looks. */
  readonly of: "both" | "category" | "age" | "everybody";
  readonly place: (PlaceBand & Pick<GroupOfMarks, "halls" | "from" | "to">) | null;
}

/** Returns the places of a result, the nearest group first; by category and age only where those are told. */
export function placesOf(
  groups: readonly GroupOfMarks[],
  test: TestCode,
  variant: string,
  value: number,
  { category, ageBand }: Looking,
): { readonly end: "floor" | "ceiling" | null; readonly places: readonly LookedUpPlace[] } {
  const wanted = [
    { of: "both" as const, category, ageBand },
    { of: "category" as const, category, ageBand: everybody },
    { of: "age" as const, category: everybody, ageBand },
    { of: "everybody" as const, category: everybody, ageBand: everybody },
  ];
  const places = wanted.flatMap(({ of, ...who }): LookedUpPlace[] => {
    if (who.category === null || who.ageBand === null) return [];
    const group = groups.find(
      (each) => each.variant === variant && each.category === who.category && each.ageBand === who.ageBand,
    );
    if (group === undefined) return [{ of, place: null }];
    const { halls, from, to } = group;
    const band = placeIn(test, value, group);
    return [{ of, place: band === null ? null : { ...band, halls, from, to } }];
  });
  return { end: endOf(value, definitionOf(test).figures.ends), places };
}
