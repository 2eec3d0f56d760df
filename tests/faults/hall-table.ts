import { join } from "node:path";
import { createHandler } from "../../electron/api/handler.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import { callerAt } from "../../electron/domain/devices/place.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { monotonic } from "../../electron/host/monotonic.ts";
import { networkFiles } from "../../electron/host/network-files.ts";
import { listBuildFiles } from "../../electron/shell/scheme/build-files.ts";
import { withSecurityHeaders } from "../../electron/shell/scheme/headers.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { dayAtHand } from "../../electron/store/tables/days.ts";
import { heatById } from "../../electron/store/tables/heats.ts";
import { marksOfDay } from "../../electron/store/tables/marks.ts";
import { connectionOf } from "../store/connection.ts";
import { makeHall } from "./hall.ts";
import type { TableOrders, TableQuestion } from "./table-process.ts";

/** A table in a process of its own, which whoever started it kills; it lets in whoever asks, for the test they name. */
const orders = JSON.parse(process.argv[2] ?? "{}") as TableOrders;
const file = join(orders.folder, "tapeline.sqlite");
const desk = createDesk({
  open: () => openStore({ file }),
  now: () => new Date(),
  monotonic,
  random: Math.random,
  demoSheets: () => {
    throw new Error("no demonstration here");
  },
  backups: { file },
  network: networkFiles(orders.folder),
});
const { network } = desk;
if (network === null) throw new Error("The desk has no network.");
if (dayAtHand(desk.store.db) === undefined) makeHall(desk.store, orders.athletes, orders.only);
const report = (fault: unknown) => console.error(fault);
const handle = createHandler(desk, report);
network.carry({
  files: await listBuildFiles(orders.pages),
  handle(request, device) {
    const { role, station } = callerAt(device.place);
    return handle(request, role, station, device);
  },
  withHeaders: withSecurityHeaders,
  report,
});
await network.turnOn("127.0.0.1", orders.port);
await desk.backups?.look();
setInterval(() => {
  for (const { id, name } of network.view().asking) {
    network.answer(id, { role: "station", test: name as TestCode });
  }
}, 20);

async function answerTo({ ask, stick, heatId }: TableQuestion): Promise<unknown> {
  if (ask === "zero") return heatById(desk.store.db, heatId ?? "")?.zero?.ms ?? null;
  if (ask === "code") {
    if (network?.view().code === null) network.openJoining();
    return network?.view().code?.code;
  }
  if (ask === "backup") {
    if (stick !== undefined) await desk.backups?.chooseSecond(stick);
    await desk.backups?.run();
    return desk.backups?.news("second").trouble?.key ?? null;
  }
  const rows = connectionOf(desk.store.db)
    .prepare(`SELECT id, athlete_id AS athleteId, void.attempt_id IS NULL AS stands
      FROM attempt LEFT JOIN void ON void.attempt_id = attempt.id`)
    .all();
  return { rows, marks: marksOfDay(desk.store.db, dayAtHand(desk.store.db)?.id ?? 0) };
}

process.on("message", (question: TableQuestion) => {
  void answerTo(question).then((answer) => process.send?.({ answer }));
});
process.send?.({ answer: "on" });
