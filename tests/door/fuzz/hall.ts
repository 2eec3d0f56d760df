import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Desk } from "../../../electron/api/door/desk.ts";
import { createHandler, type Handle } from "../../../electron/api/handler.ts";
import { createDesk } from "../../../electron/api/make-desk.ts";
import { appRouter } from "../../../electron/api/router.ts";
import { demoSheetsIn } from "../../../electron/host/demo-sheets.ts";
import { storeOpener } from "../../../electron/host/stores.ts";
import { rehearser } from "../../../electron/rehearsal/at-the-desk.ts";
import { dayAtHand } from "../../../electron/store/tables/days.ts";
import { connectionOf } from "../../store/connection.ts";
import { seeded, type TestClock, testClock } from "../desk.ts";
import { addPeople } from "../people-of-a-day.ts";

/** A desk as the program has it (backups, rehearsals, a demonstration), in a folder of its own. */
export interface FuzzHall {
  readonly desk: Desk;
  readonly handle: Handle;
  readonly clock: TestClock;
  /** Faults that were nobody's input, since they were last taken. */
  readonly faults: unknown[];
  close(): void;
}

const names = ["Ada Rill", "Bo Crank", "Cy Loop", "Di Stomp", "Ed Whirl", "Flo Dash", "Gil Tarn", "Hex Pine"];
const demo = new URL("../../../resources/demo", import.meta.url).pathname;

export async function fuzzHall(): Promise<FuzzHall> {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-fuzz-"));
  const clock = testClock();
  const faults: unknown[] = [];
  const demoSheets = demoSheetsIn(demo);
  const ground = { folder: join(folder, "rehearsals"), nativeBinding: undefined, demoSheets };
  const desk = createDesk({
    open: storeOpener(folder, undefined),
    now: () => clock.at,
    monotonic: () => clock.monotonic,
    random: seeded(1),
    demoSheets,
    rehearse: rehearser(ground, () => clock.at),
    backups: { file: join(folder, "tapeline.sqlite") },
    lockCost: 2 ** 15,
  });
  const handle = createHandler(desk, (fault) => faults.push(fault));
  const hall = {
    ...{ desk, handle, clock, faults },
    close() {
      desk.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
  await holdDay(hall);
  return hall;
}

/**
 * An open day with some people on its list and half of them checked in, wherever there is none: calls at random close
 * the day now and then, and most of the door is shut without one.
 */
export async function holdDay({ desk, clock, handle, faults }: FuzzHall): Promise<void> {
  const organiser = appRouter.createCaller({ who: "organiser", desk });
  if (dayAtHand(desk.store.db)?.state === "open") return;
  if (desk.kind === "demo") await organiser.day.leaveDemo();
  if (dayAtHand(desk.store.db) === undefined) {
    await organiser.day.create({ date: "2026-11-14", title: "Fuzz day" });
  }
  const { dayId } = await organiser.day.open();
  const table = { desk, clock, handle, faults, as: () => organiser, from: () => organiser };
  // A number that no name of an earlier day can have.
  const newest = connectionOf(desk.store.db)
    .prepare<[], { id: number }>("SELECT ifnull(max(id), 0) AS id FROM athlete")
    .get();
  const people = names.map((name) => ({ league: "Foundry Town", name: `${name} ${newest?.id ?? 0}` }));
  for (const athleteId of addPeople(table, people, dayId).slice(0, 6)) {
    const answers = { leaveOut: [], board: "name" as const, share: true, guardianConsent: true, by: "QA" };
    await organiser.checkIn.admit({ athleteId, bib: null, ...answers });
  }
}
