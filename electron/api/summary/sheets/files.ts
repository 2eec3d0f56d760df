import type { TextFile } from "../../../bundle/contents.ts";
import { fold } from "../../../domain/people/fold.ts";
import { judgesOf } from "../../../domain/summary/judges.ts";
import { missingRows } from "../../../domain/summary/missing.ts";
import { rollOf } from "../../../domain/summary/roll.ts";
import { stationsOf } from "../../../domain/summary/turns.ts";
import type { ReadableDb } from "../../../store/connection/database.ts";
import { readDay } from "../read.ts";
import { changesOf, errorsOf } from "../view.ts";
import type { Chosen } from "../which.ts";
import { athletesSheet } from "./athletes-sheet.ts";
import { attemptsSheet } from "./attempts-sheet.ts";
import { dictionaryFile } from "./dictionary.ts";
import { errorsSheet } from "./errors-sheet.ts";
import { judgesSheet } from "./judges-sheet.ts";
import { leagueChangesSheet } from "./league-changes-sheet.ts";
import { marksSheet } from "./marks-sheet.ts";
import { missingSheet } from "./missing-sheet.ts";
import { type SummarySheet, textOf } from "./sheet.ts";
import { stationsSheet, stationTimesSheet } from "./stations-sheets.ts";

/** Makes the sheets of a day or of a league on it, and the page about them: the same data give the same bytes. */
export function filesOf(
  db: ReadableDb,
  chosen: Chosen,
  demo: boolean,
): (TextFile & { readonly rows: number | null })[] {
  const sheets = sheetsOf(db, chosen);
  const { day, league } = chosen;
  const about = { date: day.date, title: day.title, league: league?.name ?? null, demo };
  return [
    { ...dictionaryFile(about, sheets), rows: null },
    ...sheets.map((sheet) => ({ name: sheet.name, text: textOf(sheet), rows: sheet.rows.length })),
  ];
}

function sheetsOf(db: ReadableDb, { day, league }: Chosen): SummarySheet[] {
  const read = readDay(db, day, league?.name ?? null);
  const { part, turns, standing } = read;
  const roll = rollOf(part);
  return [
    athletesSheet(roll),
    marksSheet(roll),
    leagueChangesSheet(changesOf(db, read, day.id, league?.name ?? null)),
    missingSheet(missingRows(roll)),
    attemptsSheet(part),
    stationsSheet(stationsOf(part, turns)),
    stationTimesSheet(part, turns),
    judgesSheet(judgesOf(part.marks, standing)),
    errorsSheet(errorsOf(db, day.id)),
  ];
}

/** Names the files of a day and league: `tapeline-summary-2026-11-14-foundry-town`. */
export function baseName({ day, league }: Chosen, demo: boolean): string {
  const parts = ["tapeline-summary", ...(demo ? ["demo"] : []), day.date];
  return league === null ? parts.join("-") : [...parts, nameOf(league)].join("-");
}

/** Makes a league's name fit a file name: letters and digits of any script, at most forty. */
function nameOf({ id, name }: NonNullable<Chosen["league"]>): string {
  const plain = fold(name)
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-|-$/g, "");
  return plain === "" ? `league-${id}` : [...plain].slice(0, 40).join("");
}
