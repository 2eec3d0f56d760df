import { useEffect } from "react";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import type { Answers } from "./answers.ts";
import { client } from "./client.tsx";
import { holdRefused, isOfToday, isWaiting, type KeptRow, keptHere, takeOut } from "./device-keep.ts";
import { draftOf, isDraft } from "./kept-drafts.ts";
import { channel, type KeptEntry, sendLost } from "./kept-entries.ts";
import { comparedAsOf, tableAsOf, tableAway } from "./table.ts";
import { isUnanswered } from "./trouble.ts";

type KeptResult = Extract<KeptEntry, { what: "enter" }>;
type KeptVoid = Extract<KeptEntry, { what: "void" }>;
type Lacks = Answers["station"]["lacks"];

/** How often a device compares what it keeps with the table, in ms: a person who was deleted goes from it by then. */
const everyMs = 60_000;
/** Entries of one question; each names up to three attempts and one before them. */
const atOnce = 20;

/**
 * Hands in what a table that came back lacks, and forgets who was deleted there. Use it once per window. `reason`: of a
 * correction whose own was not kept.
 */
export function useHandIn(reason: string): void {
  const away = tableAway.use() !== null;
  const asOf = tableAsOf.use();
  useEffect(() => {
    if (away || asOf === null) return;
    void handIn(reason, asOf);
    const timer = setInterval(() => void handIn(reason, asOf), everyMs);
    return () => clearInterval(timer);
  }, [away, asOf, reason]);
}

/** Compares all that the table has had from this device, in the order in which it was done. */
async function handIn(reason: string, asOf: string): Promise<void> {
  const rows = keptHere.get().filter(isComparable);
  let isWhole = true;
  for (const [test, own] of Map.groupBy(rows, testOf)) {
    const way: Way = { reason, handedIn: new Set() };
    for (let start = 0; start < own.length; start += atOnce) {
      const some = own.slice(start, start + atOnce);
      const lacks = await compare(test, some);
      if (lacks === "unanswered") return;
      if (lacks === "refused") isWhole = false;
      else for (const row of some) settle(row, lacks, way);
    }
  }
  if (isWhole) comparedAsOf.set(asOf);
}

/** A second judge's readings are sent again by their own screen (`sendReadingsAgain`). */
function isComparable(row: KeptRow): boolean {
  const isOwn = isDraft(row) || (row.channel === channel && entryOf(row).what !== "read");
  return isOwn && isOfToday(row) && !isWaiting(row);
}

/** Refused: the device has the place of another station by now. */
async function compare(test: TestCode, rows: readonly KeptRow[]): Promise<Lacks | "refused" | "unanswered"> {
  const attemptIds = [...new Set(rows.flatMap(attemptsNamed))];
  const athleteIds = [...new Set(rows.flatMap(athletesNamed))];
  try {
    const asked = { test, attemptIds, athleteIds };
    return await client.station.lacks.query(asked);
  } catch (error) {
    if (isUnanswered(error)) return "unanswered";
    console.warn("What this device keeps could not be compared:", error);
    return "refused";
  }
}

interface Way {
  readonly reason: string;
  /** The attempts that are on their way to the table. */
  readonly handedIn: Set<string>;
}

/** Sends what is lost, once for each; of somebody who was deleted nothing stays. */
function settle(row: KeptRow, lacks: Lacks, way: Way): void {
  if (athletesNamed(row).some((athleteId) => lacks.deleted.includes(athleteId))) takeOut(row);
  else if (!isDraft(row)) settleSent(row, lacks, way);
}

function settleSent(row: KeptRow, lacks: Lacks, way: Way): void {
  const item = entryOf(row);
  if (row.saved && item.what === "void") settleVoid(item, lacks, way);
  else if (row.saved && item.what === "enter") settleEntry(item, lacks, way);
}

function settleVoid(item: KeptVoid, { standing, attemptIds }: Lacks, { reason, handedIn }: Way): void {
  const { attemptId } = item.input;
  // Lost, and maybe with another device, which hands it in: it comes with its end, whoever is first.
  const isMended = item.mended !== undefined && attemptIds.includes(attemptId);
  if (!isMended && !standing.includes(attemptId) && !handedIn.has(attemptId)) return;
  sendLost({ ...item, input: { ...item.input, reason } });
}

function settleEntry(item: KeptResult, lacks: Lacks, { reason, handedIn }: Way): void {
  const { replaces, ...entry } = item.entry;
  const isLost = (id: string) => lacks.attemptIds.includes(id);
  // Another device may have brought the correction without the end of what it corrects.
  const isHalf = replaces !== undefined && lacks.standing.includes(replaces.attemptId);
  if (!isHalf && !entry.attempts.some(({ id }) => isLost(id))) return;
  if (isOfSomebodyElse(item, lacks)) {
    const told = [{ key: "join:refusedHere.otherBib", values: { bib: item.bib ?? "–" } }];
    holdRefused(channel, item.id, { told, asked: false });
    return;
  }
  for (const { id } of entry.attempts) handedIn.add(id);
  const base = replaces?.attemptId;
  const isKnown = item.mended !== undefined || handedIn.has(base ?? "");
  const corrects = base !== undefined && (!isLost(base) || isKnown);
  const correction = corrects ? { replaces: { attemptId: base, reason } } : {};
  // It was saved once: what was doubtful about it was answered then.
  sendLost({ ...item, entry: { ...entry, ...correction, sure: true } });
}

/** True where the athlete has another bib at the table than here: maybe the number was given anew since. */
function isOfSomebodyElse({ bib, entry }: KeptResult, { bibs }: Lacks): boolean {
  const there = bibs.find(({ athleteId }) => athleteId === entry.athleteId);
  return there !== undefined && there.bib !== null && there.bib !== bib;
}

function entryOf({ item }: KeptRow): KeptEntry {
  return item as KeptEntry;
}

function testOf(row: KeptRow): TestCode {
  if (isDraft(row)) return draftOf(row).test;
  const item = entryOf(row);
  return item.what === "enter" ? item.entry.test : item.test;
}

function athletesNamed(row: KeptRow): number[] {
  if (isDraft(row)) return [draftOf(row).athleteId];
  const item = entryOf(row);
  const mended = item.mended === undefined ? [] : [item.mended.athleteId];
  return item.what === "enter" ? [item.entry.athleteId, ...mended] : mended;
}

function attemptsNamed(row: KeptRow): string[] {
  if (isDraft(row)) return [];
  const item = entryOf(row);
  if (item.what === "read") return [];
  if (item.what === "void") return [item.input.attemptId];
  const { attempts, replaces } = item.entry;
  return [...attempts.map(({ id }) => id), ...(replaces === undefined ? [] : [replaces.attemptId])];
}
