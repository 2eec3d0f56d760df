import { odsOf, xlsxOf } from "../workbooks.ts";

/** What must come of a sheet. */
interface Expected {
  readonly kind: "roster" | "results" | "past";
  /** Rows that go in as new. */
  readonly isNew: number;
  /** Per row that is not imported its line and the reasons, all of them. */
  readonly not?: readonly (readonly [line: number, ...reasons: string[]])[];
  readonly missing?: readonly string[];
  /** Something that must stand in the preview's rows: field → text, of the first row that has it all. */
  readonly has?: Readonly<Record<string, string>>;
}

/** A sheet as somebody sends it. Leagues and people are invented; the carelessness is not. */
export interface CarelessSheet {
  readonly carelessness: string;
  readonly what: string;
  readonly sheet: string | Uint8Array;
  /** What a person says on the screen; left out: nothing. */
  readonly said?: Readonly<Record<string, unknown>>;
  readonly expected: Expected;
}

function utf16(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));
}

function latin1(text: string): Uint8Array {
  return new Uint8Array(Buffer.from(text, "latin1"));
}

type Entry = readonly [
  what: string,
  sheet: string | Uint8Array,
  expected: Expected,
  said?: CarelessSheet["said"],
];

const rosterOf = (isNew: number, more: Partial<Expected> = {}): Expected => ({
  kind: "roster",
  isNew,
  ...more,
});
const pastOf = (isNew: number, more: Partial<Expected> = {}): Expected => ({ kind: "past", isNew, ...more });
const resultsOf = (isNew: number, more: Partial<Expected> = {}): Expected => ({
  kind: "results",
  isNew,
  ...more,
});
const harbour = { league: "Salt Harbour" };
const bay = { league: "Lantern Bay" };
/** What was said of blank cells: all push-ups were full ones, and nothing was missed at the end. */
const blanksSaid = { blanks: { variant: "full", missed_at_end: "0" } };
/** Of past results, all of one day. */
const fullThatDay = { date: "2026-03-14", blanks: { variant: "full" } };

const entries: Readonly<Record<string, readonly Entry[]>> = {
  "a title above the headers": [
    ["one line", "Spring roster 2026\n\nLeague,Name,Number\nSalt Harbour,Juno Jab,8\n", rosterOf(1)],
    [
      "three lines and a note",
      "Salt Harbour\nRoster,,\nas of,March,\nLeague,Derby name,#\nSalt Harbour,Juno Jab,8\n",
      rosterOf(1),
    ],
    [
      "the headers are chosen",
      "Name,Number\nof the league,of the skater\nLeague,Who\nSalt Harbour,Juno\n",
      rosterOf(1),
      { headerLine: 3, mapping: { name: "Who" } },
    ],
    [
      "with semicolons below, and a comma in the title",
      "Our skaters, spring\n\n#;Derby name;Team\n8;Juno Jab;Salt Harbour\n9;Marlow Mash;Salt Harbour\n",
      rosterOf(2),
    ],
    [
      "in a workbook",
      xlsxOf([
        {
          name: "S",
          rows: [["Salt Harbour Derby"], [], ["Derby name", "#", "Team"], ["Juno Jab", 8, "Salt Harbour"]],
        },
      ]),
      rosterOf(1, { has: { number: "8" } }),
    ],
  ],
  "no column with the league": [
    [
      "roster, league said",
      "Name,#\nJuno Jab,8\nMarlow Mash,9\n",
      rosterOf(2, { has: { league: "Salt Harbour" } }),
      harbour,
    ],
    ["roster, nothing said", "Name,#\nJuno Jab,8\n", rosterOf(0, { missing: ["league"] })],
    ["past results, league said", "Number,Date,Test,Mark\n07,2026-03-14,Plank,2:31\n", pastOf(1), bay],
    [
      "results, league said",
      "Name,Test,Reps\nVera Velocity,Push-ups,20\n",
      resultsOf(1),
      { ...bay, ...blanksSaid },
    ],
  ],
  "headers in other words": [
    [
      "English",
      "Team,Skater,No.,Born,Gender\nSalt Harbour,Juno Jab,8,1996,F\n",
      rosterOf(1, { has: { category: "F" } }),
    ],
    [
      "Spanish",
      "Equipo;Nombre derby;Nº;Año de nacimiento;Género;Comparte\nSalt Harbour;Juno Jab;8;1996;mujer;sí\n",
      rosterOf(1),
    ],
    [
      "Spanish past results",
      "Liga;Dorsal;Fecha;Prueba;Marca\nLantern Bay;07;2026-03-14;Plancha;2:31\n",
      pastOf(1),
    ],
    [
      "two names",
      "League,Name,Derby name\nSalt Harbour,J. Doe,Juno Jab\n",
      rosterOf(1, { has: { name: "Juno Jab" } }),
    ],
  ],
  "values in other words": [
    ["categories", "League,Name,Category\nA,Ann,F\nA,Bea,NB\nA,Cleo,M\nA,Dot,non-binary\n", rosterOf(4)],
    [
      "Spanish categories",
      "Liga,Nombre,Sexo\nA,Ann,M\nA,Bea,H\nA,Cleo,mujer\nA,Dot,no binarie\n",
      rosterOf(4),
    ],
    [
      "yes and no",
      "League,Name,Guardian,Share\nA,Ann,x,sí\nA,Bea,no,TRUE\nA,Cleo,maybe,no\n",
      rosterOf(2, { not: [[4, "guardian_consent sheets.row.yesNo"]] }),
    ],
    [
      "tests",
      "League,Number,Date,Test,Mark\nLantern Bay,07,2026-03-14,Strength,22\nLantern Bay,07,2026-03-14,Salto vertical,43.5\nLantern Bay,07,2026-03-14,Circuito,6:12.4\nLantern Bay,07,2026-03-14,Sprint,9\n",
      pastOf(3, { not: [[5, "test sheets.row.test"]] }),
      { blanks: { variant: "full" } },
    ],
  ],
  "dates in other forms": [
    [
      "with dots",
      "Liga;Nummer;Date;Test;Mark\nLantern Bay;07;14.03.2026;Plank;2:31\n",
      pastOf(1),
      { mapping: { number: "Nummer" } },
    ],
    [
      "the day first, found",
      "League,Number,Date,Test,Mark\nLantern Bay,07,03/04/26,Plank,2:31\nLantern Bay,07,14/03/26,Plank,2:31\n",
      pastOf(2),
    ],
    [
      "the month first, found",
      "League,Number,Date,Test,Mark\nLantern Bay,07,3/4/2026,Plank,2:31\nLantern Bay,07,3/14/2026,Plank,2:31\n",
      pastOf(2),
    ],
    [
      "both orders, each readable by itself",
      "League,Number,Date,Test,Mark\nLantern Bay,07,14/06/26,Plank,2:31\nLantern Bay,07,3/14/2026,Plank,2:31\n",
      pastOf(2),
    ],
    [
      "both orders and one that is neither, asked",
      "League,Number,Date,Test,Mark\nLantern Bay,07,14/06/26,Plank,2:31\nLantern Bay,07,3/14/2026,Plank,2:31\nLantern Bay,07,3/4/2026,Plank,2:31\n",
      pastOf(0, { missing: ["date_order"] }),
    ],
    [
      "asked, and not answered",
      "League,Number,Date,Test,Mark\nLantern Bay,07,3/4/2026,Plank,2:31\n",
      pastOf(0, { missing: ["date_order"] }),
    ],
    [
      "asked, and answered",
      "League,Number,Date,Test,Mark\nLantern Bay,07,3/4/2026,Plank,2:31\n",
      pastOf(1),
      { dateOrder: "day" },
    ],
    [
      "a whole date of birth",
      "League,Name,DOB\nA,Ann,12/05/1995\nA,Bea,1996-05-12\nA,Cleo,12/05/95\n",
      rosterOf(2, { not: [[4, "birth_year sheets.row.birthYear"]] }),
    ],
  ],
  "another encoding or separator": [
    ["UTF-16 with tabs", utf16("League\tName\nSalt Harbour\tZoë\n"), rosterOf(1, { has: { name: "Zoë" } })],
    [
      "Windows-1252 with semicolons",
      latin1("League;Name\r\nSalt Harbour;Zoë\r\n"),
      rosterOf(1, { has: { name: "Zoë" } }),
    ],
    ["CR alone", "League,Name\rSalt Harbour,Juno Jab\r", rosterOf(1)],
    ["a byte order mark and blank columns", "\ufeffLeague,Name,,,\nSalt Harbour,Juno Jab,,,\n", rosterOf(1)],
  ],
  "a workbook": [
    [
      "007 as text, 7 as number",
      xlsxOf([
        {
          name: "S",
          rows: [
            ["League", "Name", "No."],
            ["A", "Ann", "007"],
            ["A", "Bea", 7],
          ],
        },
      ]),
      rosterOf(2, { has: { number: "007" } }),
    ],
    [
      "a date cell",
      odsOf([
        {
          name: "S",
          rows: [
            ["League", "Number", "Date", "Test", "Mark"],
            ["Lantern Bay", "07", { day: "2026-03-14" }, "Plank", "2:31"],
          ],
        },
      ]),
      pastOf(1, { has: { date: "2026-03-14" } }),
    ],
    [
      "an empty first worksheet",
      odsOf([
        { name: "Notes", rows: [] },
        {
          name: "S",
          rows: [
            ["League", "Name"],
            ["A", "Ann"],
          ],
        },
      ]),
      rosterOf(1),
    ],
    [
      "the second worksheet is chosen",
      xlsxOf([
        {
          name: "Old",
          rows: [
            ["League", "Name"],
            ["A", "Ann"],
          ],
        },
        {
          name: "New",
          rows: [
            ["League", "Name"],
            ["A", "Bea"],
            ["A", "Cleo"],
          ],
        },
      ]),
      rosterOf(2),
      { worksheet: 1 },
    ],
    [
      "a formula's value",
      xlsxOf([
        {
          name: "S",
          rows: [
            ["League", "Name", "Born"],
            ["A", "Ann", { formula: "2026-30", value: 1996 }],
          ],
        },
      ]),
      rosterOf(1, { has: { birth_year: "1996" } }),
    ],
  ],
  "a column a test, of an earlier day": [
    [
      "the day is said",
      "League,Number,Strength,Agility,Power,Plank,Circuit\nLantern Bay,07,22,29.5,43.5,2:31,6:12.4\nMill City,55,18,,,1:45,\n",
      pastOf(7),
      fullThatDay,
    ],
    [
      "the day is said, and not which push-ups they were",
      "League,Number,Strength,Plank\nLantern Bay,07,22,2:31\nMill City,55,18,1:45\n",
      pastOf(2, {
        not: [
          [2, "Strength sheets.row.blankVariant"],
          [3, "Strength sheets.row.blankVariant"],
        ],
      }),
      { date: "2026-03-14" },
    ],
    [
      "no day is said",
      "League,Number,Strength,Plank\nLantern Bay,07,22,2:31\n",
      pastOf(0, { missing: ["date"] }),
    ],
    [
      "days in the headers",
      "Liga,Número,Plancha 14.03.2026,Plancha 14.06.2026\nLantern Bay,07,2:31,2:45\n",
      pastOf(2, { has: { date: "14.06.2026" } }),
    ],
    [
      "dashes, and a mark that can't be",
      "League,Number,Strength,Plank\nLantern Bay,07,-,2:31\nMill City,55,999,n/a\n",
      pastOf(1, { not: [[3, "Strength test.push-up.plausibility.tooHigh"]] }),
      fullThatDay,
    ],
    [
      "nobody of that name, said once for all five tests",
      "League,Name,Strength,Agility,Power,Plank,Circuit\nLantern Bay,Nobody Here,22,29.5,43.5,2:31,6:12.4\n",
      pastOf(0, { not: [[2, "name sheets.row.unknownName"]] }),
      fullThatDay,
    ],
    [
      "inches and knees in the headers",
      "League,Number,Push-ups (knee),Leap (in)\nLantern Bay,07,22,17\n",
      pastOf(2),
      { date: "2026-03-14" },
    ],
  ],
  "a column a test, of this day": [
    ["strength and plank by bib", "Bib,Push-ups,Plank\n1,20,1:30\n2,18,95\n", resultsOf(4), blanksSaid],
    [
      "reaches in columns",
      "Bib,Leap standing,Leap touch 1,Leap touch 2\n1,210,250,251\n2,200,240,\n",
      resultsOf(3),
    ],
    ["directions in columns", "Bib,Quadrant jump cw laps,Quadrant jump ccw laps\n1,7,6\n", resultsOf(2)],
    [
      "a leap as one number",
      "Bib,Push-ups,Leap touch,Leap standing,Agility\n1,20,250,210,29.5\n",
      resultsOf(2, { not: [[2, "Agility sheets.row.bare"]] }),
      blanksSaid,
    ],
  ],
  "rows that are no rows": [
    ["blank ones between and behind", "League,Name\n\nA,Ann\n,,\nA,Bea\n\n\n", rosterOf(2)],
    [
      "a total at the end",
      "League,Name,Number\nA,Ann,1\nTotal,,1 skater\n",
      rosterOf(1, { not: [[3, "name sheets.row.empty", "number sheets.row.number"]] }),
    ],
    [
      "headers again in the middle",
      "League,Name,Number\nA,Ann,1\nLeague,Name,Number\nA,Bea,2\n",
      rosterOf(2, { not: [[3, "number sheets.row.number"]] }),
    ],
    [
      "one of them left out by choice",
      "League,Name,Number\nA,Ann,1\nLeague,Name,Number\nA,Bea,2\n",
      rosterOf(2),
      { leftOut: [3] },
    ],
  ],
  "several slips in one row": [
    [
      "three, all told",
      "League,Name,Number,Born,Category\nA,Ann,22B,95,?\n",
      rosterOf(0, {
        not: [
          [2, "number sheets.row.number", "birth_year sheets.row.birthYear", "category sheets.row.category"],
        ],
      }),
    ],
    [
      "put right on the spot",
      "League,Name,Number,Born,Category\nA,Ann,22B,95,?\n",
      rosterOf(1, { has: { number: "22" } }),
      { edits: { 2: { 2: "22", 3: "1995", 4: "" } } },
    ],
    [
      "of past results",
      "League,Number,Date,Test,Mark\nLantern Bay,070707,14.13.2026,Sprint,9\n",
      pastOf(0, { not: [[2, "number sheets.row.number", "date sheets.row.date", "test sheets.row.test"]] }),
    ],
    [
      "of a row by test",
      "League,Number,Strength,Plank\nLantern Bay,07,9999,2-31\n",
      pastOf(0, { not: [[2, "Strength test.push-up.plausibility.tooHigh", "Plank units.time.form"]] }),
      fullThatDay,
    ],
  ],
  "numbers as they are written": [
    ["with a sign before", "League,Name,#\nA,Ann,#22\nA,Bea,# 7\n", rosterOf(2)],
    ["07 beside 7", "League,Name,No\nA,Ann,07\nA,Bea,7\n", rosterOf(2)],
    [
      "an apostrophe of a spreadsheet, hard spaces",
      "League,Name,No\nA,\u00a0Ann\u00a0,\u00a07\u00a0\n",
      rosterOf(1, { has: { name: "Ann" } }),
    ],
    [
      "with decimals and letters",
      "League,Name,No\nA,Ann,7.0\nA,Bea,B7\n",
      rosterOf(0, {
        not: [
          [2, "number sheets.row.number"],
          [3, "number sheets.row.number"],
        ],
      }),
    ],
  ],
};

export const corpus: readonly CarelessSheet[] = Object.entries(entries).flatMap(([carelessness, sheets]) =>
  sheets.map(([what, sheet, expected, said = {}]) => ({ carelessness, what, sheet, expected, said })),
);
