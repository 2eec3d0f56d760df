import { leastForQuartiles } from "../../../domain/privacy/publish.ts";
import type { Contents, TextFile } from "./contents.ts";
import { howMarksAreMade } from "./how-marks-are-made.ts";
import { wrapped } from "./wrapped.ts";

/**
 * What a stranger needs to read the sheets rightly, in plain words. Markdown. No year but the quarter's stands in it, not
 * even of a source: whoever looks for a year of birth must find none.
 */
export function codebookFile(contents: Contents): TextFile {
  const parts = [
    opening(contents),
    marksColumns,
    summaryColumns,
    `## How the marks are made\n\n${howMarksAreMade(contents.protocols)}`,
    whatWasDone(contents),
    cautions,
  ];
  return { name: "codebook.md", text: `${parts.join("\n\n")}\n` };
}

function opening({ quarter, demo, rows }: Contents): string {
  const first = `This bundle holds ${rows.length} fitness marks of roller derby skaters from one testing day in ${quarter}.
Five field tests were held in a fixed order: strength (\`push-up\`), agility (\`agility\`), power (\`vertical\`), core
(\`core\`) and endurance (\`endurance\`). Every athlete in it agreed to share.`;
  const invented = demo ? "**These athletes are invented.** This is a demonstration, not data.\n\n" : "";
  return `# Codebook

${invented}${wrapped(first)}

| file | what it is |
|---|---|
| datapackage.json | a description of all files for machines (Frictionless Data Package), with sizes and hashes |
| marks.csv | one row a mark |
| summary.csv | how many rows each test has, and their quartiles |
| protocols.json | how each test was held |
| privacy.json | what was generalised and held back |
| codebook.md | this page |

Sheets are comma-separated, UTF-8, with a header line and a decimal point. An empty field means: does not apply.`;
}

const marksColumns = `## marks.csv

| column | meaning |
|---|---|
| id | random, made for this bundle alone; the rows of one athlete can't be found by it |
| test | \`push-up\`, \`agility\`, \`vertical\`, \`core\` or \`endurance\` |
| variant | of the push-up \`full\` or \`knee\`; otherwise empty. Never compare marks of different variants |
| age_band | age reached in the year of the day, in fixed bands of five years, or \`unknown\` |
| category | how the athlete wants to be compared: \`women\`, \`men\`, \`open\` or \`unknown\` |
| quarter | calendar quarter of the day |
| mark | the mark, in the unit beside it |
| unit | \`reps\`, \`landings\`, \`cm\` or \`s\` |

The rows stand in random order.`;

const summaryColumns = `## summary.csv

| column | meaning |
|---|---|
| test, variant, unit | as in marks.csv |
| n | rows of that test and variant in marks.csv |
| lower_quartile, median, upper_quartile | linear between neighbours (type 7 of Hyndman and Fan); empty below ${leastForQuartiles} rows |`;

function whatWasDone({ k, kReached, suppressed }: Contents): string {
  const small = suppressed.some(({ reason }) => reason === "small-class");
  const held = small
    ? "Rows that had fewer companions were held back."
    : "No row had to be held back for that.";
  const least =
    kReached === null ? "No class was left." : `The smallest class here has ${kReached} athletes.`;
  return `## What was done so that nobody can be found

- Left out: name, number, bib, league, year of birth, date, devices, volunteers, notes and the order of entry.
- Generalised: the year of birth to an age band, the date to a quarter.
- At least ${k} different athletes, its own counted, stand behind the test, variant, age band, category and quarter of
  every row (k-anonymity after Sweeney). ${held} ${least}
- Only complete marks of athletes who agreed to share; of those who may be under 18, only with a guardian's consent.
- At most one row for each athlete, test and variant. Rows of different tests are not linked.`;
}

const cautions = `## Cautions

- Who comes to a testing day and agrees to share is not a sample of the sport. Small classes are missing, so the rarest
  ages and categories are missing most.
- Marks are exact and were shown in the hall. Somebody who was there may recognise one: do not try to name anybody.
- Times are taken by hand. Push-ups are judged by people, and judges differ.
- Compare marks only where the fingerprints in protocols.json are equal.
- These are field tests between friends of the sport, not medical findings and not a selection standard.`;
