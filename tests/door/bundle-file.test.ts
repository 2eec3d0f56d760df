import { createHash } from "node:crypto";
import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { beforeAll, expect, test } from "vitest";
import { standardTroubles, tableTroubles } from "../standards/data-package.ts";
import { date, dayTitle, holdDay, initials, leagueNames, notes, skaters } from "./bundle-hall.ts";
import { testDesk } from "./desk.ts";

interface Resource {
  name: string;
  path: string;
  profile?: string;
  bytes: number;
  hash: string;
  schema?: { fields: Parameters<typeof tableTroubles>[0] };
}

let zip: Uint8Array;
let zipName: string;
let files: Record<string, Uint8Array>;
let descriptor: { name?: string; profile?: string; resources: Resource[] };

beforeAll(async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters, ["push-up", "agility", "vertical", "core", "endurance"]);
  const preview = await hall.as("organiser").bundle.preview({ dayId });
  const written = await hall.as("organiser").bundle.write({ dayId, previewSha256: preview?.sha256 ?? "" });
  zip = Buffer.from(written.bytes, "base64");
  zipName = written.name;
  files = unzipSync(zip);
  descriptor = JSON.parse(text("datapackage.json"));
});

function text(name: string): string {
  return strFromU8(files[name] ?? new Uint8Array());
}

function sha256(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

function table(name: string): string[][] {
  return Papa.parse<string[]>(text(name), { skipEmptyLines: true }).data;
}

test("it holds the files that the format names, and no others", () => {
  expect(Object.keys(files).sort()).toEqual(
    ["codebook.md", "datapackage.json", "marks.csv", "privacy.json", "protocols.json", "summary.csv"].sort(),
  );
});

// Data Package and Table Schema, version 1: see tests/standards/data-package/SOURCE.md.
test("the descriptor is valid by the published schemas", () => {
  expect(standardTroubles(descriptor)).toEqual([]);
});

test("those schemas do find what is wrong", () => {
  const [marks, ...others] = descriptor.resources;
  const { name: _name, ...unnamed } = marks as Resource;
  const { schema: _schema, ...untyped } = marks as Resource;
  const broken: unknown[] = [
    { ...descriptor, resources: [] },
    { ...descriptor, resources: [unnamed, ...others] },
    { ...descriptor, resources: [untyped, ...others] },
    { ...descriptor, resources: [{ ...marks, hash: "sha256:xyz" }, ...others] },
    { ...descriptor, resources: [{ ...marks, path: 7 }, ...others] },
    { ...descriptor, name: "Not A Name" },
  ];
  for (const each of broken) expect(standardTroubles(each as typeof descriptor)).not.toEqual([]);
});

test("every resource is there with the size and the hash that the descriptor gives", () => {
  // Relative names without folders or "..", which the schemas leave to the reader.
  for (const { path } of descriptor.resources) expect(path).toMatch(/^[a-z]+\.[a-z]+$/);
  const told = descriptor.resources.map(({ path, bytes, hash }) => [path, bytes, hash]);
  const found = descriptor.resources.map(({ path }) => {
    const content = files[path] ?? new Uint8Array();
    return [path, content.length, `sha256:${sha256(content)}`];
  });
  expect(told).toEqual(found);
  expect(told.length).toBe(5);
});

test.each(["marks", "summary"])("the sheet %s keeps to its own Table Schema", (name) => {
  const resource = descriptor.resources.find((each) => each.name === name);
  expect(resource?.profile).toBe("tabular-data-resource");
  const sheet = table(`${name}.csv`);
  expect(sheet.length).toBeGreaterThan(4);
  expect(tableTroubles(resource?.schema?.fields ?? [], sheet)).toEqual([]);
});

test("sheets end every record with CR LF (RFC 4180) and have no byte order mark", () => {
  for (const name of ["marks.csv", "summary.csv"]) {
    expect(text(name).endsWith("\r\n")).toBe(true);
    expect(text(name).replaceAll("\r\n", "")).not.toMatch(/[\r\n\ufeff]/);
  }
});

test("protocols carry parameters, which way is better and the fingerprints of every variant", () => {
  const { tests } = JSON.parse(text("protocols.json"));
  expect(tests.map((each: { test: string }) => each.test)).toEqual([
    "push-up",
    "agility",
    "vertical",
    "core",
    "endurance",
  ]);
  expect(tests[0]).toEqual({
    test: "push-up",
    unit: "reps",
    smallestStep: 1,
    better: "higher",
    parameters: { bpm: 40, beatsPerRep: 2, missesToStop: 3 },
    variants: [
      { variant: "full", fingerprint: "push-up/full beatsPerRep=2 bpm=40 missesToStop=3" },
      { variant: "knee", fingerprint: "push-up/knee beatsPerRep=2 bpm=40 missesToStop=3" },
    ],
  });
  expect(tests[4]).toMatchObject({ better: "lower", unit: "s", smallestStep: 0.001 });
});

test("what was held back is told so coarsely that no count says one or two", () => {
  const privacy = JSON.parse(text("privacy.json"));
  expect(privacy).toMatchObject({
    ...{ rule: "unlinked-stepped-marks", k: 5, kReached: 5, l: 2, rowsOfOneAthleteLinked: false },
    neighbour: { bibsMatchedForCertain: 0, likeliestGuess: 0.2 },
    risk: { largest: 0.2, uniqueRows: 0 },
  });
  // 15 and 10 marks without consent, 8 of too few: each up to the next five.
  expect(privacy.suppressed).toEqual([
    { reason: "no consent to share", marksAtMost: 25 },
    { reason: "no complete mark", marksAtMost: 0 },
    { reason: "fewer than k athletes alike, or a test not told", marksAtMost: 10 },
  ]);
});

test("how each test is told is said with its lines, and of a test that is not told nothing", () => {
  const { tests } = JSON.parse(text("privacy.json"));
  expect(tests.map((each: { test: string; variant: string }) => `${each.test} ${each.variant}`)).toEqual([
    ...["push-up full", "agility ", "vertical ", "core ", "endurance "],
  ]);
  expect(tests[2]).toEqual({
    ...{ test: "vertical", variant: "", unit: "cm", step: 5, bottomCodedBelow: 35, topCodedFrom: 40 },
    ...{ ageBand: "not told", category: "not told", leagueSize: "told", quarter: "told" },
  });
  // Push-ups on the knees are named where the test is explained, and have no row.
  expect(table("marks.csv").filter((row) => row[2] === "knee")).toEqual([]);
});

test("the codebook tells a stranger every column, every test and which way is better", () => {
  const codebook = text("codebook.md");
  for (const name of [...(table("marks.csv")[0] ?? []), ...(table("summary.csv")[0] ?? [])]) {
    expect(codebook).toContain(name);
  }
  expect(codebook).toMatch(/`endurance`\*\* \(s\)\. [^*]*\*\*Lower is better\.\*\*/);
  expect(codebook).toContain("one every 3 s");
  expect(codebook.split("\n").filter((line) => line.length > 130)).toEqual([]);
});

/** Every value that could say who it was, when or where, and every form that a date is likely to take. */
const identifying: readonly string[] = [
  ...skaters.flatMap(({ name, number, bib }) => [name, ...name.split(" "), number, String(bib)]),
  ...skaters.flatMap(({ birthYear }) => (birthYear === null ? [] : [String(birthYear)])),
  ...leagueNames.flatMap((league) => [league, ...league.split(" ")]),
  ...dayTitle.split(/,? /).filter((word) => word.length > 4),
  ...notes,
  ...notes.flatMap((note) => note.split(" ").filter((word) => word.length > 5)),
  "zzyq",
  date,
  date.replaceAll("-", ""),
  date.slice(0, 7),
  date.slice(5),
  "14.11.",
  "11/14",
  "14/11",
  "November",
  "nov 14",
];

/** Everything that leaves, in every form of text: names, contents, and the raw bytes of the zip (stored, not packed). */
function everything(): string {
  const hashes = descriptor.resources.map(({ hash }) => hash.replace("sha256:", ""));
  const parts = [zipName, ...Object.keys(files), ...Object.values(files).map((each) => strFromU8(each))];
  const all = `${parts.join("\n")}\n${Buffer.from(zip).toString("latin1")}`;
  // Hashes are random digits and were checked above; they are taken out so that no digits of theirs count.
  return hashes.reduce((rest, hash) => rest.replaceAll(hash, ""), all);
}

test("no value that names or places anybody is anywhere in it, in any letter case", () => {
  const all = everything().toLowerCase();
  expect(all).toContain("marks.csv");
  expect(identifying.length).toBeGreaterThan(150);
  expect(identifying.filter((value) => all.includes(value.toLowerCase()))).toEqual([]);
});

test("nor are initials, nor a moment of any clock", () => {
  const all = everything();
  for (const by of initials) expect(all).not.toContain(by);
  expect(all).not.toMatch(/\d{1,2}:\d{2}/);
  expect(all).not.toMatch(/\d{4}-\d{2}-\d{2}/);
});

test("every entry of the zip has the same fixed time, the earliest the format knows", () => {
  // Local file headers (PKWARE APPNOTE 4.3.7): signature, then at 10 the time and at 12 the date of MS-DOS.
  const view = Buffer.from(zip);
  const starts = Array.from(view.keys()).filter(
    (at) => at + 4 <= view.length && view.readUInt32LE(at) === 0x04034b50,
  );
  expect(starts.length).toBe(6);
  for (const start of starts) {
    expect([view.readUInt16LE(start + 10), view.readUInt16LE(start + 12)]).toEqual([0, (1 << 5) | 1]);
  }
});
