import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { Desk } from "../../electron/api/door/desk.ts";
import { createHandler } from "../../electron/api/handler.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import { appRouter } from "../../electron/api/router.ts";
import type { Language } from "../../electron/domain/languages.ts";
import type { Role } from "../../electron/domain/lock/roles.ts";
import { demoSheetsIn } from "../../electron/host/demo-sheets.ts";
import { keptLanguage } from "../../electron/host/language.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { refusalOf, seeded, testClock } from "./desk.ts";
import { bring } from "./sheets.ts";

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "tapeline-language-"));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** A desk whose language is kept in the folder, on a machine that speaks `system`. */
function deskIn(system: Language): { desk: Desk; as(who: Role): ReturnType<typeof appRouter.createCaller> } {
  const clock = testClock();
  const desk = createDesk({
    open: () => openStore({ file: ":memory:" }),
    now: () => clock.at,
    monotonic: () => clock.monotonic,
    random: seeded(1),
    demoSheets: demoSheetsIn(new URL("../../resources/demo", import.meta.url).pathname),
    language: keptLanguage(folder, () => system),
  });
  return { desk, as: (who) => appRouter.createCaller({ who, desk }) };
}

test("a desk begins in its system's language, and keeps the one that is chosen", async () => {
  const first = deskIn("es");
  expect(await first.as("organiser").language.current()).toEqual({ language: "es" });
  await first.as("organiser").language.choose({ language: "en" });
  expect(await first.as("board").language.current()).toEqual({ language: "en" });
  first.desk.close();
  const again = deskIn("es");
  expect(await again.as("organiser").language.current()).toEqual({ language: "en" });
  again.desk.close();
});

test("a choice is announced once, so that every window follows at once", async () => {
  const { desk, as } = deskIn("en");
  const heard: unknown[] = [];
  desk.news.listen(({ topics }) => heard.push(topics));
  await as("check-in").language.choose({ language: "es" });
  expect(heard).toEqual([["language"]]);
  desk.close();
});

test("the board may read the language and not choose it; there is no other language", async () => {
  const { desk, as } = deskIn("en");
  const refused = await refusalOf(as("board").language.choose({ language: "es" }));
  expect(refused.key).toBe("door.forbidden");
  await expect(as("organiser").language.choose({ language: "xx" as Language })).rejects.toThrow();
  expect(desk.language).toBe("en");
  desk.close();
});

test.each(["", "{", '{"language":"xx"}', '{"language":"es","more":1}'])(
  "a spoilt file (%j) is no choice",
  (text) => {
    writeFileSync(join(folder, "language.json"), text);
    const language = keptLanguage(folder, () => "en");
    expect(language.now()).toBe("en");
    language.choose("es");
    expect(JSON.parse(readFileSync(join(folder, "language.json"), "utf8"))).toEqual({ language: "es" });
    expect(keptLanguage(folder, () => "en").now()).toBe("es");
  },
);

test("what is stored or saved as text is said in the desk's language", async () => {
  const { desk, as } = deskIn("es");
  await as("organiser").day.openDemo();
  expect((await as("organiser").day.current()).day?.title).toBe("Jornada de demostración");
  const handle = createHandler(desk, (fault) => expect.unreachable(String(fault)));
  const uploadId = await bring({ handle }, "league,name,number\nNorth Quay,Plum Static,12345\n");
  await as("organiser").intake.take({ uploadId, kind: "roster" });
  const { text } = await as("organiser").intake.keptBackSheet({ uploadId });
  expect(text).toContain("El número de quien patina tiene hasta cuatro cifras y nada más.");
  desk.close();
});
