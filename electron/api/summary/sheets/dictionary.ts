import type { TextFile } from "../../../bundle/contents.ts";
import { wrapped } from "../../../bundle/wrapped.ts";
import { definitionOf, type TestCode, testCodes } from "../../../domain/tests/registry.ts";
import type { SummarySheet } from "./sheet.ts";

/** The subject of the sheets. */
export interface About {
  readonly date: string;
  readonly title: string;
  /** Null: the whole day. */
  readonly league: string | null;
  readonly demo: boolean;
}

/** Makes `data-dictionary.md`, with every sheet and column, from the columns themselves. */
export function dictionaryFile(about: About, sheets: readonly SummarySheet[]): TextFile {
  const parts = [opening(about, sheets), tests, ...sheets.map(sheetPart)];
  return { name: "data-dictionary.md", text: `${parts.join("\n\n")}\n` };
}

function opening({ date, title, league, demo }: About, sheets: readonly SummarySheet[]): string {
  const whose =
    league === null ? "Everybody on the day's list is in them." : `Only ${plain(league)} is in them.`;
  const names = `**These sheets hold names.** They are for the organiser and for the coaches of the leagues, not for
sharing: the anonymised bundle is the file that may leave. ${whose}`;
  const form = `Sheets are comma-separated (RFC 4180), UTF-8 with a byte order mark, with a header line and a decimal
point. An empty field means: does not apply, or not known. Text that a spreadsheet would run as a formula has an
apostrophe before it, also where it stands after a separator or a quotation mark within a field.`;
  const files = sheets.map(({ name, holds }) => `| ${name} | ${holds} |`).join("\n");
  return `# Summary of ${plain(title)}, ${date}

${demo ? "**These athletes are invented.** This is a demonstration, not data.\n\n" : ""}${wrapped(names)}

${wrapped(form)}

| sheet | one row |
|---|---|
${files}`;
}

const tests = `## The tests

| code | test | unit of the mark | better |
|---|---|---|---|
${testCodes.map(testLine).join("\n")}`;

function testLine(test: TestCode): string {
  const { english, protocol } = definitionOf(test);
  return `| \`${test}\` | ${english.name} | ${english.mark} | ${protocol.better} |`;
}

function sheetPart({ name, columns }: SummarySheet): string {
  const rows = columns.map((column) => `| ${column.name} | ${column.unit} | ${column.means} |`);
  return `## ${name}\n\n| column | unit or form | meaning |\n|---|---|---|\n${rows.join("\n")}`;
}

/** Makes plain text of a title or a league's name: no line ends, and no markdown. */
function plain(text: string): string {
  return text.replace(/\s+/g, " ").replace(/[\\`*_{}[\]<>()#+!|~]/g, "\\$&");
}
