import { type BundleFile, bundleFile } from "../../bundle/bundle-file.ts";
import type { Contents } from "../../bundle/contents.ts";
import { seededChance } from "../../domain/chance.ts";
import { consentOf } from "../../domain/privacy/consent.ts";
import { type Attack, playNeighbour, sightingsOf, unprotectedRows } from "../../domain/privacy/neighbour.ts";
import { protect } from "../../domain/privacy/protect.ts";
import { contentsOf, publish, rowContent, summarise } from "../../domain/privacy/publish.ts";
import { quarterOf, quasiOf } from "../../domain/privacy/quasi.ts";
import { likenessOf, type Risk, riskOf } from "../../domain/privacy/risk.ts";
import {
  type BundleKind,
  type Candidate,
  type Protected,
  usualStrictness,
} from "../../domain/privacy/rule.ts";
import { playSubtraction, type Subtraction } from "../../domain/privacy/subtraction.ts";
import type { ReadableDb } from "../../store/connection/database.ts";
import { allAthletes } from "../../store/tables/athletes.ts";
import { type Day, dayProtocols } from "../../store/tables/days.ts";
import { marksOfDay } from "../../store/tables/marks.ts";
import { namelessMarks } from "../../store/tables/nameless.ts";
import type { Desk } from "../door/desk.ts";
import { seedOf } from "./seed.ts";

/** The organiser's choice: the kind of bundle, and its k. */
export interface Wish {
  readonly kind: BundleKind;
  readonly k: number;
}

/** The contents of a bundle, and the file that holds them. */
export interface Prepared {
  readonly contents: Contents;
  /** Number of athletes behind the rows; not in the file. */
  readonly athletes: number;
  /** All marks that could be released, exact; only for the organiser's screen. */
  readonly able: Protected["able"];
  /** The risk if the marks were released as they are. */
  readonly before: {
    readonly risk: Risk;
    readonly attack: Attack;
    readonly subtraction: Subtraction;
  };
  readonly file: BundleFile;
}

/** Makes the bundle of a day in memory. */
export function prepare(desk: Desk, db: ReadableDb, day: Day, wish: Wish): Prepared {
  return bundleOf(candidatesOf(db, day, wish.kind), wish, {
    quarter: quarterOf(day.date),
    demo: desk.kind === "demo",
    rehearsal: desk.rehearsal,
    protocols: dayProtocols(db, day.id),
  });
}

/**
 * Makes the bundle of these marks. A seed computed from the rows' content, without their owners, draws their order and
 * ids: the same rows give the same bytes, even after a restart; other rows get other ids; and neither order nor ids say
 * more than the rows do.
 */
export function bundleOf(
  candidates: readonly Candidate[],
  { kind, k }: Wish,
  facts: Pick<Contents, "quarter" | "demo" | "rehearsal" | "protocols">,
): Prepared {
  const strictness = { ...usualStrictness, k };
  const { kept, suppressed, decisions, able } = protect(kind, candidates, strictness);
  const linked = kind === "profiles";
  const sightings = sightingsOf(able);
  const rows = publish(kept, seededChance(seedOf(contentsOf(kept))));
  const unprotected = unprotectedRows(able, linked);
  const contents: Contents = {
    ...{ kind, decisions, suppressed, strictness, rows, ...facts },
    summaries: summarise(kept),
    likeness: likenessOfRows(rows),
    risk: riskOf(rows.map(rowContent)),
    attack: playNeighbour(rows, sightings, { k, linked }),
    subtraction: playSubtraction(rows, sightings, linked),
  };
  const before = {
    risk: riskOf(unprotected.map(rowContent)),
    attack: playNeighbour(unprotected, sightings, { k, linked }),
    subtraction: playSubtraction(unprotected, sightings, linked),
  };
  const athletes = new Set(kept.map(({ athlete }) => athlete)).size;
  return { contents, athletes, able, before, file: bundleFile(contents) };
}

/** Returns k of whole rows, and l of their marks within equal quasi-identifiers and tests. */
function likenessOfRows(rows: Contents["rows"]): Contents["likeness"] {
  const whole = likenessOf(rows, rowContent, rowContent);
  const marks = rows.flatMap((row) => row.marks.map((mark) => ({ mark, row })));
  const diverse = likenessOf(
    marks,
    ({ mark, row }) => JSON.stringify([mark.test, mark.variant, ...testsOf(row), ...quasiTextsOf(row)]),
    ({ mark }) => JSON.stringify([mark.low, mark.high]),
  );
  return { ...diverse, k: whole.k };
}

function quasiTextsOf({ quasi }: Contents["rows"][number]): string[] {
  return [quasi.ageBand, quasi.category, quasi.leagueSize, quasi.quarter];
}

function testsOf({ marks }: Contents["rows"][number]): string[] {
  return marks.map(({ test, variant }) => `${test} ${variant}`);
}

/** Returns every mark that a day's bundle could report, with what the privacy rule needs of its athlete. */
export function candidatesOf(db: ReadableDb, day: Day, kind: BundleKind): Candidate[] {
  // Nothing links the marks of an erased athlete, so a profile can't hold them.
  return kind === "marks" ? [...ofAthletes(db, day), ...ofErased(db, day)] : ofAthletes(db, day);
}

/**
 * Returns erased athletes' nameless marks, each as its own athlete: a day has one at most per person, test and variant.
 */
function ofErased(db: ReadableDb, day: Day): Candidate[] {
  return namelessMarks(db, day.id).map(({ test, variant, value, ageBand, category }, index) => ({
    ...{ athlete: -1 - index, league: -1 - index, test, variant, ageBand, category },
    ...{ leagueSize: "unknown", quarter: quarterOf(day.date), consent: "given" },
    mark: { state: "complete", value },
  }));
}

function ofAthletes(db: ReadableDb, day: Day): Candidate[] {
  const athletes = allAthletes(db);
  const byId = new Map(athletes.map((athlete) => [athlete.id, athlete]));
  const leagues = Map.groupBy(athletes, ({ leagueId }) => leagueId);
  return marksOfDay(db, day.id).flatMap(({ athleteId, test, variant, mark }) => {
    const athlete = byId.get(athleteId);
    if (athlete === undefined) return [];
    const { leagueId, birthYear, category, board } = athlete;
    const hidden = board === "hidden";
    const described = { birthYear, category, leagueAthletes: leagues.get(leagueId)?.length ?? 0 };
    const quasi = quasiOf(described, variant, day.date);
    return [
      {
        ...{ athlete: athleteId, league: leagueId, hidden, test, mark },
        ...{ consent: consentOf(athlete, day.openedOn ?? day.date), ...quasi },
      },
    ];
  });
}
