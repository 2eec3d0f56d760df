import { isDone } from "../../domain/queue/queue.ts";
import { gain, type TypicalError } from "../../domain/statistics/change.ts";
import { noiseBand } from "../../domain/statistics/noise-band.ts";
import type { LengthUnit, Written } from "../../domain/tests/protocol.ts";
import { protocolOf, type TestCode } from "../../domain/tests/registry.ts";
import type { EarlierMark } from "../../store/tables/marks.ts";
import { toldOf } from "../marks/attempts.ts";
import type { MarkWithNews } from "../marks/marks.ts";
import type { PlaceAmongOthers } from "../place/schemas.ts";

/** The facts of one test on a card. */
export interface TestFacts {
  readonly test: TestCode;
  /** ISO 8601 day. */
  readonly date: string;
  readonly error: TypicalError;
  readonly lengths: LengthUnit;
  /** The fingerprint of each variant under the day's rules, in the order of the protocol. */
  readonly fingerprints: ReadonlyMap<string, string>;
  /** The athlete's own marks of this test on the day. */
  readonly marks: readonly MarkWithNews[];
  /** The athlete's own earlier marks of a fingerprint, oldest first. */
  readonly earlier: (fingerprint: string) => readonly EarlierMark[];
  /** Returns a complete mark's place in the reference group; null with too few others. */
  readonly place: (variant: string, value: number) => PlaceAmongOthers | null;
}

export type CardTest = ReturnType<typeof cardTest>;

/**
 * One test of a card. `told` is null when it was not taken on this day; then `variant` is the way of the newest mark before.
 * `best` is up to and with this day, `also` what was done on it in another way, which never compares. `points` are the marks of
 * the same rules, oldest first. `noise` (grains) is what is no news after the last test before this day's; `assumed`, that it
 * is nothing but an assumption yet. `place` is null when there are not enough others to compare with.
 */
export function cardTest(facts: TestFacts) {
  const { test, marks, lengths, error } = facts;
  const [chief, ...also] = inOrder(
    facts,
    marks.filter(({ mark }) => isDone(mark)),
  );
  const variant = chief?.variant ?? newestVariant(facts);
  const history = facts.earlier(facts.fingerprints.get(variant) ?? "");
  const last = history.at(-1);
  const value = chief?.mark.state === "complete" ? chief.mark.value : null;
  return {
    test,
    variant,
    told: chief === undefined ? null : toldOf(chief, lengths),
    best: bestOf(facts, value === null ? history : [...history, { value }]),
    also: also.map((mark) => toldOf(mark, lengths)),
    points: pointsOf(facts, history, value),
    noise: last === undefined ? null : noiseBand(test, last.value, error),
    assumed: error.assumed,
    place: value === null ? null : facts.place(variant, value),
  };
}

/** The variants in the order of the protocol: on a day with both, the full push-ups are what the card is about. */
function inOrder({ fingerprints }: TestFacts, marks: readonly MarkWithNews[]): readonly MarkWithNews[] {
  const order = [...fingerprints.keys()];
  return marks.toSorted((a, b) => order.indexOf(a.variant) - order.indexOf(b.variant));
}

/** The way in which an athlete who did not take the test did it last. */
function newestVariant({ fingerprints, earlier }: TestFacts): string {
  const dated = [...fingerprints].map(([variant, name]) => ({
    variant,
    date: earlier(name).at(-1)?.date ?? "",
  }));
  const [newest] = dated.toSorted((a, b) => b.date.localeCompare(a.date));
  return newest?.variant ?? "";
}

function bestOf(facts: TestFacts, marks: readonly { readonly value: number }[]): Written | null {
  const { better, write } = protocolOf(facts.test);
  const [best] = marks.toSorted((a, b) => gain(better, a.value, b.value));
  return best === undefined ? null : write(best.value, facts.lengths);
}

function pointsOf({ test, date, lengths }: TestFacts, history: readonly EarlierMark[], value: number | null) {
  const { write } = protocolOf(test);
  const before = history.map((mark) => ({ date: mark.date, value: mark.value, today: false }));
  const all = value === null ? before : [...before, { date, value, today: true }];
  return all.map((point) => ({ ...point, written: write(point.value, lengths) }));
}
