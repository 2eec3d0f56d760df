import type { Register, RegisteredPerson } from "./register.ts";

/** Somebody of the store, or of an earlier line of the same sheet. */
interface Listed extends RegisteredPerson {
  readonly athlete: unknown;
  readonly line: number | null;
}

/** Whom a row of a roster may mean. */
export interface Meant<P> {
  /** Who agrees with all that the row says, and alone does. */
  readonly sure: P | undefined;
  /** Who has the row's number in its league. */
  readonly byNumber: P | undefined;
  /** Those of the store who may be meant; nobody else of it is. */
  readonly candidates: readonly P[];
  /** Somebody of the same sheet with the same name and another number. */
  readonly sameName: P | undefined;
}

/**
 * Says whom a row of a roster may mean. Names and numbers that one of both leaves out say nothing; two known years of
 * birth that differ say that it is somebody else, but for whoever has the number: somebody loses it then.
 */
export function choiceOf<P extends Listed>(register: Register<P>, row: RegisteredPerson): Meant<P> {
  const byNumber = row.number === "" ? undefined : register.byNumber(row.league, row.number);
  const named = register.byName(row.league, row.name).filter((each) => !isOtherYear(each, row));
  const agreeing = named.filter((each) => isSameNumber(each, row));
  const exact = agreeing.find((each) => each === byNumber);
  const [only] = agreeing;
  const isAlone = named.length === 1 && byNumber === undefined;
  const sure = exact ?? (isAlone ? only : undefined);
  if (sure !== undefined) return { sure, byNumber, candidates: [], sameName: undefined };
  const elsewhere = register.elsewhere(row.league, row.name).filter((each) => !isOtherYear(each, row));
  const all = new Set(byNumber === undefined ? [] : [byNumber]);
  for (const each of [...named, ...elsewhere]) all.add(each);
  return {
    sure,
    byNumber,
    // Whom an earlier line means is told apart already.
    candidates: [...all].filter(({ athlete, line }) => athlete !== null && line === null),
    sameName: named.find(({ line }) => line !== null),
  };
}

function isOtherYear(one: RegisteredPerson, other: RegisteredPerson): boolean {
  return one.birthYear !== null && other.birthYear !== null && one.birthYear !== other.birthYear;
}

function isSameNumber(one: RegisteredPerson, other: RegisteredPerson): boolean {
  return one.number === other.number || one.number === "" || other.number === "";
}
