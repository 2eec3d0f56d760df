import { strFromU8, unzipSync } from "fflate";
import Papa from "papaparse";
import { expect, test } from "vitest";
import { addNamelessMark } from "../../electron/store/tables/nameless.ts";
import { standardTroubles, tableTroubles } from "../standards/data-package.ts";
import { holdDay, skaters } from "./bundle-hall.ts";
import { testDesk } from "./desk.ts";

test("linked profiles are a valid package too, and their sheet keeps to its own schema", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall);
  const { bundle } = hall.as("organiser");
  const preview = await bundle.preview({ dayId, kind: "profiles" });
  expect(preview?.rows.length).toBeGreaterThan(9);
  const written = await bundle.write({ dayId, kind: "profiles", previewSha256: preview?.sha256 ?? "" });
  const files = unzipSync(Buffer.from(written.bytes, "base64"));
  const text = (name: string) => strFromU8(files[name] ?? new Uint8Array());
  const descriptor = JSON.parse(text("datapackage.json"));
  expect(standardTroubles(descriptor)).toEqual([]);
  expect(Object.keys(files)).toContain("profiles.csv");
  expect(Object.keys(files)).not.toContain("marks.csv");
  for (const name of ["profiles", "summary"]) {
    const { schema } = descriptor.resources.find((each: { name: string }) => each.name === name);
    const sheet = Papa.parse<string[]>(text(`${name}.csv`), { skipEmptyLines: true }).data;
    expect(tableTroubles(schema.fields, sheet)).toEqual([]);
    for (const column of sheet[0] ?? []) expect(text("codebook.md")).toContain(column);
  }
  expect(JSON.parse(text("privacy.json"))).toMatchObject({
    rule: "linked-profiles",
    rowsOfOneAthleteLinked: true,
  });
});

test("marks of somebody erased go with the unlinked ones, in a league that nobody knows, and into no profile", async () => {
  const hall = testDesk();
  const dayId = await holdDay(hall, skaters.slice(0, 12));
  const { bundle } = hall.as("organiser");
  const able = async (kind: "marks" | "profiles") =>
    (await bundle.preview({ dayId, kind }))?.tests.find(({ test: code }) => code === "vertical")?.able;
  expect([await able("marks"), await able("profiles")]).toEqual([12, 12]);
  hall.desk.store.write(["people"], (db) =>
    addNamelessMark(db, {
      ...{ id: "n1", dayId, test: "vertical", variant: "", fingerprint: "vertical trials=3", value: 6900 },
      ...{ ageBand: "25 to 29", category: "women" },
    }),
  );
  expect([await able("marks"), await able("profiles")]).toEqual([13, 12]);
  // Leaps of 30 to 35.5 cm by half a cm, and 34.5: eight under 34 and five from there on. One of thirteen is more than 5 %:
  // so that all can leave, the size of the league is not told of anybody.
  const preview = await bundle.preview({ dayId });
  const leaps = preview?.rows.filter(({ marks: [mark] }) => mark?.test === "vertical");
  expect(leaps).toHaveLength(13);
  expect(new Set(leaps?.map(({ leagueSize }) => leagueSize))).toEqual(new Set(["not told"]));
});
