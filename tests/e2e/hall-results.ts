import type { Page } from "@playwright/test";
import Papa from "papaparse";
import { type TestCode, testCodes } from "../../electron/domain/tests/registry.ts";
import { readDoor } from "./devices-kept.ts";
import type { ListedAthlete } from "./hall-list.ts";

/** What a table has of a day. */
export interface Results {
  /** The organiser's sheet of all marks. */
  readonly whole: string;
  /** `marks.csv` as it would leave in the bundle. */
  readonly bundle: string;
  readonly count: Count;
}

/** Attempts against the list: what is on it, what the table lacks, what it has too often, and how they came. */
interface Count {
  readonly listed: number;
  readonly lost: number;
  readonly doubled: number;
  /** From a heat that was run on a screen. */
  readonly live: number;
  /** Typed in at a station. */
  readonly keyed: number;
}

export async function resultsOf(desk: Page, athletes: readonly ListedAthlete[]): Promise<Results> {
  const { files } = (await readDoor(desk, "bundle.preview", {})) as {
    readonly files: readonly { readonly name: string; readonly text: string }[];
  };
  const marks = files.find(({ name }) => name === "marks.csv");
  if (marks === undefined) throw new Error("The bundle has no marks.csv.");
  const whole = await sheetOf(desk, "athletes_marks.csv");
  return { whole, bundle: marks.text, count: countOf(await sheetOf(desk, "attempts.csv"), athletes) };
}

async function sheetOf(desk: Page, name: string): Promise<string> {
  const { text } = (await readDoor(desk, "summary.sheet", { name })) as { readonly text: string };
  return text;
}

function countOf(sheet: string, athletes: readonly ListedAthlete[]): Count {
  const rows = Papa.parse<Record<string, string>>(sheet, { header: true, skipEmptyLines: true }).data;
  const over = athletes.flatMap(({ bib, attempts }) =>
    testCodes.map((test) => {
      const got = rows.filter((row) => row.bib === String(bib) && row.test === test).length;
      return { listed: listedAt(test, attempts), got };
    }),
  );
  const sum = (of: (each: (typeof over)[number]) => number) => over.reduce((all, each) => all + of(each), 0);
  const from = (source: "heat" | "station") => rows.filter((row) => row.source === source).length;
  return {
    listed: sum(({ listed }) => listed),
    lost: sum(({ listed, got }) => Math.max(0, listed - got)),
    doubled: sum(({ listed, got }) => Math.max(0, got - listed)),
    live: from("heat"),
    keyed: from("station"),
  };
}

/** Three touches are typed in one go, and are an attempt each. */
function listedAt(test: TestCode, attempts: ListedAthlete["attempts"]): number {
  const typed = attempts[test] ?? [];
  return test === "vertical" ? typed.reduce((all, fields) => all + fields.length - 1, 0) : typed.length;
}

/** Says whether the table has so many attempts of an athlete at a test by now. */
export async function hasAttempts(desk: Page, test: TestCode, bib: number, count: number): Promise<boolean> {
  const view = (await readDoor(desk, "station.view", { test, lengths: "cm" })) as {
    readonly recent: readonly { readonly attempt: { readonly who: { readonly bib: number } } }[];
  };
  return view.recent.filter(({ attempt }) => attempt.who.bib === bib).length >= count;
}
