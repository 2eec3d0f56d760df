import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { onTestFinished } from "vitest";
import type { Desk } from "../../electron/api/door/desk.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import { appRouter } from "../../electron/api/router.ts";
import { demoSheetsIn } from "../../electron/host/demo-sheets.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { networkInMemory } from "../network/in-memory.ts";
import { fillHall, type Invented } from "../store/hall.ts";
import { seeded, testClock } from "./desk.ts";

/** A desk that makes backups, in a folder of its own that goes when the test ends. */
export function backedUpDesk(folder = temporaryFolder()) {
  const file = join(folder, "tapeline.sqlite");
  const clock = testClock();
  const network = networkInMemory();
  const desk = createDesk({
    open: () => openStore({ file }),
    now: () => clock.at,
    monotonic: () => clock.monotonic,
    random: seeded(1),
    demoSheets: demoSheetsIn(new URL("../../resources/demo", import.meta.url).pathname),
    backups: { file },
    network,
  });
  onTestFinished(() => desk.close());
  const { backups, people } = appRouter.createCaller({ who: "organiser", desk });
  return { folder, file, clock, desk, network, backups, people, keeper: keeperOf(desk) };
}

export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-backups-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

function keeperOf(desk: Desk) {
  if (desk.backups === null) throw new Error("this desk makes no backups");
  return desk.backups;
}

const person: Invented = {
  ...{
    sign: "Ada",
    name: "Ada Rill",
    number: "07",
    birthYear: 1999,
    category: "open",
    guardianConsent: false,
  },
  ...{ board: "bib", share: true, asked: true, league: "Foundry Town", bib: 1 },
  ...{ reps: 20, corrected: true, heat: true, past: true },
};

/** Something in every table that can say something about somebody. */
export function fill(desk: Desk, names: readonly string[] = ["Ada Rill", "Bo Crank"]): void {
  const people = names.map((name, index) => ({
    ...person,
    ...{ name, sign: name.split(" ")[0] ?? name, number: String(index), bib: index + 1 },
  }));
  desk.store.write(["people"], (db) => fillHall(db, people));
}
