import { leastForQuartiles } from "../domain/privacy/publish.ts";
import { definitionOf, testCodes } from "../domain/tests/registry.ts";
import type { DayProtocol } from "../store/tables/days.ts";
import type { Contents, TextFile } from "./contents.ts";
import { inWords, listed } from "./english.ts";
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
    `## How the results are worked out\n\n${howMarksAreMade(contents.protocols)}`,
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
      ? `${rows.length} fitness test results of roller derby skaters`
      : `the linked fitness test results of ${rows.length} roller derby skaters`;
  const first = `This anonymous data file holds ${held} from one testing day in ${quarter}.
${inWords(testCodes.length)} field tests were run in a fixed order: ${listed(measured, "and")}. Every athlete in it agreed to
sharing.`;
  const invented = demo ? "**These athletes are made up.** This is a demo, not data.\n\n" : "";
  const tried = rehearsal
    ? "**This is a rehearsal.** Do not share it: each day is shared in one file, and this is not the one.\n\n"
    : "";
  const sheet =
    kind === "marks" ? "| marks.csv | one row per result |" : "| profiles.csv | one row per athlete |";
  return `# Codebook

${invented}${tried}${wrapped(first)}

| file | what it is |
|---|---|
| datapackage.json | a computer-readable description of all files (Frictionless Data Package), with sizes and hashes |
${sheet}
| summary.csv | how many results each test has, and their quartiles |
| protocols.json | how each test was run |
| privacy.json | what was generalised and suppressed, test by test |
| codebook.md | this page |

The .csv files are comma-separated, UTF-8, with a header line and a decimal point. \`unknown\` means that nobody wrote it down;
\`not told\` means that it is not reported, so that nobody can be found.`;
}

const quasiLines = `| age_band | age reached in the year of the day, in fixed bands of five years; \`unknown\` or \`not told\` |
| category | the category in which the athlete is compared: \`women\`, \`men\`, \`open\`; \`unknown\` or \`not told\` |
| league_size | athletes of the athlete's league: \`up to 14\`, \`15 to 29\`, \`30 and more\`; \`unknown\` or \`not told\` |
| quarter | calendar quarter of the day |`;

const marksColumns = `## marks.csv

| column | meaning |
|---|---|
| id | random, made for this file alone; the rows of one athlete can't be found by it |
| test | ${listed(codes, "or")} |
| variant | of the push-up \`full\` or \`knee\`; otherwise empty. Never compare results of different variants |
${quasiLines}
| mark_low, mark_high | the interval that holds the result, see below |
| unit | of the bounds: \`reps\`, \`landings\`, \`cm\` or \`s\` |

The rows are in random order.`;

function profileColumns({ rows }: Contents): string {
  const tests = profileTests(rows).map(
    ({ test, variant, columns: [low, high] }) =>
      `| ${low}, ${high} | the interval that holds the result of \`${test}\`${variant === "" ? "" : ` (\`${variant}\`)`}; both empty: no result |`,
  );
  return `## profiles.csv

| column | meaning |
|---|---|
| id | random, made for this file alone |
${quasiLines}
${tests.join("\n")}

Tests without columns are not included, so that the others can be reported together. Units are in protocols.json. The rows
are in random order.`;
}

const bounds = `## Results are intervals

A result is reported as the interval that holds it: the lower bound ≤ result < the upper bound. The lines between intervals are
whole multiples of a step from a fixed ladder, on every day the same. The lowest results have no lower bound and the highest
no upper bound, so that the best and the worst are among others. Where exactly in its interval a result lies is not reported:
percentiles can be given between bounds and no finer. Do not use the middle of the interval instead.`;

const summaryColumns = `## summary.csv

| column | meaning |
|---|---|
| test, variant, unit | as in the file of rows |
| n | results of that test and variant in this file |
| lower_quartile_low, lower_quartile_high | bounds between which the lower quartile of the exact results lies |
| median_low, median_high | the same for the median |
| upper_quartile_low, upper_quartile_high | the same for the upper quartile |

Quartiles are linear between neighbours (type 7 of Hyndman and Fan), of the results in this file; a bound is empty where
the interval has none, and all are empty below ${leastForQuartiles} results. They are worked out from the rows and say nothing more.`;

const cautions = `## Cautions

- Who comes to a testing day and agrees to share is not a sample of the sport. Small groups are missing, so the rarest
  ages, categories and results are missing most.
- Do not try to name anybody, and do not join these rows with other lists of people.
- Times are taken by hand. Push-ups are judged by people, and judges differ.
- Compare results only where the fingerprints in protocols.json are equal.
- These are field tests of volunteers in a hall, not medical findings and not a selection standard.`;

/** One paragraph per test, with the parameters of that day, in the order of the tests. */
function howMarksAreMade(held: readonly DayProtocol[]): string {
  return testCodes
    .flatMap((test) => {
      const parameters = held.find((protocol) => protocol.test === test)?.parameters;
      if (parameters === undefined) return [];
      const { protocol, english } = definitionOf(test);
      const better = protocol.better === "higher" ? "Higher is better." : "**Lower is better.**";
      const how = english.how(protocol.parameters.parse(parameters));
      return [wrapped(`**\`${test}\`** (${protocol.grain.unit}). ${how} ${better}`)];
    })
    .join("\n\n");
}
