import type { Interval } from "../../../domain/statistics/interval.ts";
import { leastTogether } from "../../../domain/statistics/shared.ts";
import type { LeagueChange } from "../../../domain/summary/league-changes.ts";
import { protocolOf, type TestCode } from "../../../domain/tests/registry.ts";
import { column, type SheetColumn, type SummarySheet, sheetOf } from "./sheet.ts";
import { inTestUnit, unitOf } from "./values.ts";

type Found = NonNullable<LeagueChange["found"]>;

/** Makes a column of what is only said of enough athletes. */
function found(
  name: string,
  unit: string,
  means: string,
  cell: (found: Found, line: LeagueChange) => string | number | null,
): SheetColumn<LeagueChange> {
  return column(name, unit, means, (line) => (line.found === null ? null : cell(line.found, line)));
}

const turned = (test: TestCode) => protocolOf(test).better === "lower";

/** Turns a gain into a mark less the one before, as in the other sheets: of the circuit a gain is below zero. */
function lessBefore({ test }: LeagueChange, { amount, low, high }: Interval & { readonly amount: number }) {
  const ends = turned(test) ? { low: -high, high: -low } : { low, high };
  const inUnit = (grains: number) => inTestUnit(test, grains);
  return { amount: inUnit(turned(test) ? -amount : amount), low: inUnit(ends.low), high: inUnit(ends.high) };
}

const others = ({ others: difference }: Found, line: LeagueChange) =>
  difference === null ? null : lessBefore(line, difference);

const columns: SheetColumn<LeagueChange>[] = [
  column("league", "", "The league", ({ league }) => league),
  column("test", "code", "The test", ({ test }) => test),
  column("variant", "full, knee or empty", "How push-ups were done", ({ variant }) => variant),
  column(
    "athletes",
    "",
    `How many athletes are compared with their own last result; of fewer than ${leastTogether} nothing is said`,
    ({ pairs }) => pairs,
  ),
  column("first_results", "", "Athletes with nothing to compare with", ({ firsts }) => firsts),
  column(
    "other_trials",
    "",
    "Athletes whose last result was the best of more or fewer trials: not compared",
    ({ unlike }) => unlike,
  ),
  column(
    "not_finished",
    "",
    "Athletes who stopped the circuit before its end: without a time they are in no mean, which so looks better",
    ({ unfinished }) => unfinished,
  ),
  column("unit", "", "The unit of changes and spreads", ({ test }) => unitOf(test)),
  found(
    "mean_change",
    "see unit",
    "The mean of result less last result, without `known_test`. Of the circuit a change below zero is a gain. What the hall " +
      "and the judges moved for everybody is in it as well as training",
    ({ mean }, line) => lessBefore(line, mean).amount,
  ),
  found(
    "mean_change_low",
    "see unit",
    "The interval that holds the true mean, 95 % (t); it allows for what a whole day may move for everybody",
    ({ mean }, line) => lessBefore(line, mean).low,
  ),
  found("mean_change_high", "see unit", "Its upper end", ({ mean }, line) => lessBefore(line, mean).high),
  found(
    "known_test",
    "see unit",
    "What was taken off, in the mean: what the newest result gained by knowing the test; 0 where nobody knows that",
    ({ learnt }, { test }) => inTestUnit(test, turned(test) ? -learnt : learnt),
  ),
  found(
    "by_chance",
    "0 to 1",
    "How likely a mean at least as far from zero is where the true one is zero, by chance and by what days may move",
    ({ mean: { byChance } }) => Number(byChance.toPrecision(3)),
  ),
  found(
    "more_than_chance",
    "yes or no",
    "yes: it stands out of all leagues and tests of the day looked at at once (Holm, 5 %)",
    ({ holds }) => (holds ? "yes" : "no"),
  ),
  found(
    "true_spread",
    "see unit",
    "How far the athletes' true changes lie apart (SD): that of the changes without the typical error's part. 0: they " +
      "differ no more than normal variation makes",
    ({ spread }, { test }) => inTestUnit(test, spread.amount),
  ),
  found("true_spread_low", "see unit", "Its interval, 95 %", ({ spread }, { test }) =>
    inTestUnit(test, spread.low),
  ),
  found("true_spread_high", "see unit", "Its upper end", ({ spread }, { test }) =>
    inTestUnit(test, spread.high),
  ),
  found("typical_error", "see unit", "The typical error at these athletes' results", ({ error }, { test }) =>
    inTestUnit(test, error),
  ),
  found("typical_error_assumed", "yes or no", "as assumed in typical_errors.csv", ({ assumed }) =>
    assumed ? "yes" : "no",
  ),
  found(
    "clear_gains",
    "athletes",
    "How many have `clear gain` in athletes_marks.csv",
    ({ clearGains }) => clearGains,
  ),
  found("clear_losses", "athletes", "How many have `clear loss` there", ({ clearLosses }) => clearLosses),
  found(
    "clear_gains_by_chance",
    "athletes",
    "How many clear gains there would be if nobody had changed, but by what moved everybody that day",
    ({ byChance }) => Number(byChance.gains.toFixed(3)),
  ),
  found("clear_losses_by_chance", "athletes", "How many clear losses there would be then", ({ byChance }) =>
    Number(byChance.losses.toFixed(3)),
  ),
  found(
    "others",
    "athletes",
    "The athletes of the other leagues with a change, at least " +
      `${leastTogether}; empty of fewer, and no comparison then`,
    ({ others: difference }) => difference?.pairs ?? null,
  ),
  found(
    "less_others",
    "see unit",
    "mean_change less that of those others: what moved everybody alike is not in it",
    (told, line) => others(told, line)?.amount ?? null,
  ),
  found(
    "less_others_low",
    "see unit",
    "Its interval, 95 % (Welch)",
    (told, line) => others(told, line)?.low ?? null,
  ),
  found("less_others_high", "see unit", "Its upper end", (told, line) => others(told, line)?.high ?? null),
];

/** Makes `league_changes.csv`: how each league changed, in numbers of the league and of no athlete. */
export function leagueChangesSheet(changes: readonly LeagueChange[]): SummarySheet {
  return sheetOf(
    "league_changes.csv",
    "One league, test and variant: the mean change since the athletes' own last results.",
    columns,
    changes,
  );
}
