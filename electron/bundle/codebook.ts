import { leastForQuartiles } from "../domain/privacy/publish.ts";
import { definitionOf, testCodes } from "../domain/tests/registry.ts";
import type { Contents, TextFile } from "./contents.ts";
import { inWords, listed } from "./english.ts";
import { howMarksAreMade } from "./how-marks-are-made.ts";
import { whatIsPromised } from "./promises.ts";
import { profileTests } from "./sheets.ts";
import { wrapped } from "./wrapped.ts";

/**
 * Makes the guide that a stranger needs to read the sheets, in plain words. Markdown. It contains no year but the
 * quarter's, not even of a source: a search for a year of birth must find none.
 */
export function codebookFile(contents: Contents): TextFile {
  const parts = [
    opening(contents),
    contents.kind === "marks" ? marksColumns : profileColumns(contents),
    bounds,
    summaryColumns,
    `## How the marks are made\n\n${howMarksAreMade(contents.protocols)}`,
    whatIsPromised(contents),
    cautions,
  ];
  return { name: "codebook.md", text: `${parts.join("\n\n")}\n` };
}

const codes = testCodes.map((test) => `\`${test}\``);
const measured = testCodes.map((test) => `${definitionOf(test).english.ability} (\`${test}\`)`);

function opening({ quarter, demo, rehearsal, rows, kind }: Contents): string {
  const held =
    kind === "marks"
      ? `${rows.length} fitness marks of roller derby skaters`
      : `the linked marks of ${rows.length} roller derby skaters`;
  const first = `This bundle holds ${held} from one testing day in ${quarter}.
${inWords(testCodes.length)} field tests were held in a fixed order: ${listed(measured, "and")}. Every athlete in it agreed to
share.`;
  const invented = demo ? "**These athletes are invented.** This is a demonstration, not data.\n\n" : "";
  const tried = rehearsal
    ? "**This is a rehearsal.** Do not hand it on: of a day one bundle is made, and this is not the one.\n\n"
    : "";
  const sheet = kind === "marks" ? "| marks.csv | one row a mark |" : "| profiles.csv | one row an athlete |";
  return `# Codebook

${invented}${tried}${wrapped(first)}

| file | what it is |
|---|---|
| datapackage.json | a description of all files for machines (Frictionless Data Package), with sizes and hashes |
${sheet}
| summary.csv | how many marks each test has, and where their quartiles lie |
| protocols.json | how each test was held |
| privacy.json | what was generalised and held back, test by test |
| codebook.md | this page |

Sheets are comma-separated, UTF-8, with a header line and a decimal point. \`unknown\` means that nobody noted it;
\`not told\` means that it was left out so that nobody can be found.`;
}

const quasiLines = `| age_band | age reached in the year of the day, in fixed bands of five years; \`unknown\` or \`not told\` |
| category | how the athlete wants to be compared: \`women\`, \`men\`, \`open\`; \`unknown\` or \`not told\` |
| league_size | athletes of the athlete's league: \`up to 14\`, \`15 to 29\`, \`30 and more\`; \`unknown\` or \`not told\` |
| quarter | calendar quarter of the day |`;

const marksColumns = `## marks.csv

| column | meaning |
|---|---|
| id | random, made for this bundle alone; the rows of one athlete can't be found by it |
| test | ${listed(codes, "or")} |
| variant | of the push-up \`full\` or \`knee\`; otherwise empty. Never compare marks of different variants |
${quasiLines}
| mark_low, mark_high | the interval that holds the mark, see below |
| unit | of the bounds: \`reps\`, \`landings\`, \`cm\` or \`s\` |

The rows stand in random order.`;

function profileColumns({ rows }: Contents): string {
  const tests = profileTests(rows).map(
    ({ test, variant, columns: [low, high] }) =>
      `| ${low}, ${high} | the interval that holds the mark of \`${test}\`${variant === "" ? "" : ` (\`${variant}\`)`}; both empty: no mark |`,
  );
  return `## profiles.csv

| column | meaning |
|---|---|
| id | random, made for this bundle alone |
${quasiLines}
${tests.join("\n")}

Tests without columns were left out, so that the others could be told together. Units stand in protocols.json. The rows
stand in random order.`;
}

const bounds = `## Marks are intervals

A mark is told as the interval that holds it: the lower bound ≤ mark < the upper bound. The lines between intervals are
whole multiples of a step from a fixed ladder, on every day the same. The lowest marks have no lower bound and the highest
no upper bound, so that the best and the worst stand among others. Where exactly in its interval a mark lies is not told:
percentiles can be given between bounds and no finer. Do not put the middle in its place.`;

const summaryColumns = `## summary.csv

| column | meaning |
|---|---|
| test, variant, unit | as in the sheet of rows |
| n | marks of that test and variant in this bundle |
| lower_quartile_low, lower_quartile_high | bounds between which the lower quartile of the exact marks lies |
| median_low, median_high | the same for the median |
| upper_quartile_low, upper_quartile_high | the same for the upper quartile |

Quartiles are linear between neighbours (type 7 of Hyndman and Fan), of the marks in this bundle; a bound is empty where
the interval has none, and all are empty below ${leastForQuartiles} marks. They are worked out from the rows and say nothing more.`;

const cautions = `## Cautions

- Who comes to a testing day and agrees to share is not a sample of the sport. Small groups are missing, so the rarest
  ages, categories and marks are missing most.
- Do not try to name anybody, and do not join these rows with other lists of people.
- Times are taken by hand. Push-ups are judged by people, and judges differ.
- Compare marks only where the fingerprints in protocols.json are equal.
- These are field tests between friends of the sport, not medical findings and not a selection standard.`;
