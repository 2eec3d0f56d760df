import { fold } from "../../domain/people/fold.ts";
import { withoutName } from "../../domain/people/mentions.ts";
import type { Mark } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { type HeldRows, heldRows } from "../../store/erasure/held.ts";
import type { Row } from "../../store/steps/rows.ts";
import { allSteps } from "../../store/steps/steps.ts";
import { type Athlete, allAthletes } from "../../store/tables/athletes.ts";
import { dayById } from "../../store/tables/days.ts";
import { heatById } from "../../store/tables/heats.ts";
import { seriesOf, studyById } from "../../store/tables/studies.ts";
import type { Held, HeldDay } from "./held-schema.ts";

/** Removes other athletes' names from a note; they are not this athlete's to get. */
type Own = (text: string) => string;

/** Returns all data about an athlete, and nothing about anybody else. */
export function heldAbout(db: ReadableDb, athlete: Athlete, about: Pick<Held, "made_at" | "invented">): Held {
  const rows = heldRows(db, athlete.id);
  const own = ownText(db, athlete);
  const { id, league, name, number, birthYear, category } = athlete;
  return {
    ...{ format: "tapeline-held", version: 1, ...about },
    person: { id, league, name, number, birth_year: birthYear, category },
    consents: {
      board: athlete.board,
      share: athlete.share,
      guardian_consent: athlete.guardianConsent,
      asked_at_the_table: athlete.asked,
    },
    days: rows.entrant.map((entrant) => dayOf(db, rows, entrant, own)),
    past_marks: rows.past_mark.map(({ date, test, variant, fingerprint, value }) => ({
      ...{ date, test, variant, protocol: fingerprint },
      ...measured(test, value),
    })),
    past_removed: rows.past_void.map(({ date, test, variant, fingerprint, value, instead, ...line }) => ({
      ...{ date, test, variant, protocol: fingerprint },
      ...measured(test, value),
      instead: instead === null ? null : measured(test, instead).value,
      ...{ reason: own(line.reason), voided_by: line.voided_by, at: line.at },
    })),
    study_readings: readingsOf(db, rows, own),
    changes: changesOf(db, rows),
  };
}

function readingsOf(db: ReadableDb, { study_reading }: HeldRows, own: Own): Held["study_readings"] {
  return study_reading.flatMap(({ id, study_id, position, value, source, entered_by, reason, at }) => {
    const study = studyById(db, study_id);
    if (study === undefined) return [];
    const { test, variant, kind } = study;
    const judge = seriesOf(db, study_id).find((series) => series.position === position)?.judge ?? "";
    const { unit } = protocolOf(test).grain;
    const read = value === null ? null : measured(test, value).value;
    const entered = { source, entered_by, reason: own(reason) };
    return [{ id, test, at, variant, kind, judge, value: read, unit, ...entered }];
  });
}

/** What was done to the record as a whole; how it was left is no fact about a person. */
function changesOf(db: ReadableDb, { step_row }: HeldRows): Held["changes"] {
  const steps = new Map(allSteps(db).map((step) => [step.seq, step]));
  const read = (text: string | null) => (text === null ? null : (JSON.parse(text) as Row));
  return step_row.flatMap(({ step_seq, place, before, after }) => {
    const step = steps.get(step_seq);
    if (step === undefined || place === "digest") return [];
    const { kind, at, by } = step;
    return [{ kind, at, by, table: place, before: read(before), after: read(after) }];
  });
}

function ownText(db: ReadableDb, athlete: Athlete): Own {
  const mine = fold(athlete.name);
  const others = allAthletes(db)
    .map(({ name }) => ({ name, folded: fold(name) }))
    .filter(({ folded }) => folded !== mine);
  return (text) => {
    const words = fold(text);
    const meant = others.filter(({ name, folded }) => words.includes(folded) || text.includes(name));
    return meant.reduce((left, { name }) => withoutName(left, name), text);
  };
}

/** Converts grains to the unit on sheets. */
function measured(
  test: TestCode,
  value: number,
): { value: number; unit: Held["past_marks"][number]["unit"] } {
  const { unit, perUnit } = protocolOf(test).grain;
  return { value: value / perUnit, unit };
}

function dayOf(db: ReadableDb, rows: HeldRows, entrant: HeldRows["entrant"][number], own: Own): HeldDay {
  const { day_id, state, bib, since } = entrant;
  const day = dayById(db, day_id);
  // An entrant refers to a day by a foreign key, so this can't happen.
  if (day === undefined) throw new Error(`Day ${day_id} is not there.`);
  const ofDay = (row: { readonly day_id: number }) => row.day_id === day_id;
  return {
    ...{ date: day.date, title: day.title, state: day.state },
    entry: { state, bib, since },
    left_out: rows.left_out
      .filter(ofDay)
      .map(({ test, kind, reason, decided_by, at }) => ({ test, kind, reason: own(reason), decided_by, at })),
    calls: rows.call.filter(ofDay).map(({ test, at }) => ({ test, at })),
    absences: rows.absence.filter(ofDay).map(({ id, test, at, noted_by }) => ({ id, test, at, noted_by })),
    attempts: rows.attempt.filter(ofDay).map((attempt) => attemptOf(rows, attempt, own)),
    marks: rows.mark.filter(ofDay).map(markOf),
    heats: rows.heat_lane.filter(ofDay).map((lane) => heatOf(db, rows, lane, own)),
  };
}

type AttemptRow = HeldRows["attempt"][number];

function attemptOf(rows: HeldRows, attempt: AttemptRow, own: Own): HeldDay["attempts"][number] {
  const { id, test, at, seq, variant, slot, seen, entered_by, source, note, replaces, heat_id, result } =
    attempt;
  const { performed } = attempt;
  const ended = rows.void.find(({ attempt_id }) => attempt_id === id);
  // It may correct an attempt entered for somebody else.
  const corrects = rows.attempt.some((each) => each.id === replaces) ? replaces : null;
  return {
    ...{ id, test, at, order: seq, variant, slot, seen: JSON.parse(seen) as unknown, entered_by, source },
    ...{ performed_at: performed, note: own(note), replaces: corrects, heat: heat_id, result },
    void: ended === undefined ? null : { reason: own(ended.reason), by: ended.voided_by, at: ended.at },
  };
}

function markOf(row: HeldRows["mark"][number]): HeldDay["marks"][number] {
  const { test, variant, fingerprint, state, value, detail, seq, rules, position, rest_minutes } = row;
  const { unit } = protocolOf(test).grain;
  return {
    ...{ test, variant, protocol: fingerprint, state, unit },
    value: value === null ? null : measured(test, value).value,
    ...{ detail: JSON.parse(detail) as Mark, order: seq, rules, position, rest_minutes },
  };
}

function heatOf(
  db: ReadableDb,
  rows: HeldRows,
  { heat_id, lane, variant }: HeldRows["heat_lane"][number],
  own: Own,
): HeldDay["heats"][number] {
  const heat = heatById(db, heat_id);
  if (heat === undefined) throw new Error(`Heat ${heat_id} is not there.`);
  const taps = rows.heat_event.filter((event) => event.heat_id === heat_id);
  return {
    ...{ id: heat_id, test: heat.test, gathered_at: heat.gatheredAt, started_at: heat.zero?.wall ?? null },
    ended_at: heat.ended?.at ?? null,
    ending: heat.ended?.ending ?? null,
    reason: own(heat.ended?.reason ?? ""),
    ...{ lane, variant },
    taps: taps.map(({ id, seq, kind, at_ms, detail, tapped_by, at }) => ({
      ...{ id, order: seq, kind, at_ms, tapped_by, at },
      detail: ownDetail(JSON.parse(detail) as unknown, own),
    })),
  };
}

/** Cleans the only tap with free text: the reason why a trial was lost. */
function ownDetail(detail: unknown, own: Own): unknown {
  if (typeof detail !== "object" || detail === null || !("reason" in detail)) return detail;
  return { ...detail, reason: own(String(detail.reason)) };
}
