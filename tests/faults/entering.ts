import { existsSync, readFileSync, writeSync } from "node:fs";
import { join } from "node:path";
import type { Desk } from "../../electron/api/door/desk.ts";
import { createHandler, type Handle } from "../../electron/api/handler.ts";
import { createDesk } from "../../electron/api/make-desk.ts";
import type { Keeper } from "../../electron/backups/keeper.ts";
import { monotonic } from "../../electron/host/monotonic.ts";
import { openStore } from "../../electron/store/connection/open.ts";
import { bringLogIn } from "../../electron/store/keeping/guard.ts";
import { attemptsOfDay } from "../../electron/store/tables/attempts.ts";
import { dayAtHand } from "../../electron/store/tables/days.ts";
import { connectionOf } from "../store/connection.ts";
import { fillDisk } from "./fill.ts";
import { makeHall } from "./hall.ts";
import {
  chanceOf,
  correctionOf,
  newEntry,
  type Orders,
  oneOf,
  order,
  type Said,
  type Sent,
  type SentBefore,
} from "./orders.ts";

/**
 * A process that enters attempts through the door from several clients at once, at random, until something ends it. It
 * says what it sends before it sends it and what was saved after the answer: whoever ended it can hold it to that.
 */
const orders = JSON.parse(process.argv[2] ?? "{}") as Orders;
const chance = chanceOf(orders.seed);
const file = join(orders.folder, "tapeline.sqlite");

/** Written through to the pipe before anything else happens. */
function say(said: Said): void {
  writeSync(1, `${JSON.stringify(said)}\n`);
}

function openDesk(): Desk {
  const desk = createDesk({
    open: () => openStore({ file }),
    now: () => new Date(),
    monotonic,
    random: chance,
    demoSheets: () => {
      throw new Error("no demonstration here");
    },
    backups: { file },
  });
  connectionOf(desk.store.db).pragma(`synchronous = ${orders.synchronous}`);
  return desk;
}

const desk = openDesk();
const handle: Handle = createHandler(desk, (fault) => console.error(fault));
if (dayAtHand(desk.store.db) === undefined) makeHall(desk.store, orders.athletes);

const known: SentBefore[] = existsSync(orders.before)
  ? readFileSync(orders.before, "utf8")
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => JSON.parse(line) as SentBefore)
  : [];
const saved: Sent[] = known.filter((each) => each.saved).map(({ sent }) => sent);
const ended = new Set(saved.flatMap(({ replaces }) => replaces?.attemptId ?? []));
const next = new Map<number, number>();
const busy = new Set<number>();

/** Reads how far everybody is, so that new entries come in the order of the day. */
function readSteps(): void {
  const { db } = desk.store;
  const day = dayAtHand(db);
  for (let athlete = 1; athlete <= orders.athletes; athlete += 1) next.set(athlete, 0);
  for (const { athleteId, test } of attemptsOfDay(db, day?.id ?? 0)) {
    const step = order.findIndex((each) => each.test === test) + 1;
    next.set(athleteId, Math.max(next.get(athleteId) ?? 0, step));
  }
}

async function send(sent: Sent): Promise<boolean> {
  say({ sent });
  const headers = { "content-type": "application/json" };
  const request = new Request("app://desk/trpc/station.enter", {
    method: "POST",
    headers,
    body: JSON.stringify(sent),
  });
  const response = await handle(request, "station");
  const answer = (await response.json()) as {
    result?: { data: { outcome: string } };
    error?: { data: { sentence: { key: string } } };
  };
  const id = sent.attempts[0]?.id ?? "";
  if (answer.result?.data.outcome === "saved") {
    say({ saved: id });
    if (orders.checkpoints) checkpoint();
    return true;
  }
  const key = answer.error?.data.sentence.key ?? "asked";
  say({ refused: id, key });
  if (key === "disk.full" && orders.fills && !full) await fillUp();
  return false;
}

async function enterNew(): Promise<void> {
  const free = [...next].filter(([athlete, step]) => step < order.length && !busy.has(athlete));
  const [athlete, step] = oneOf(chance, free) ?? [];
  if (athlete === undefined || step === undefined) return;
  busy.add(athlete);
  const sent = newEntry(chance, athlete, step);
  if (await send(sent)) {
    saved.push(sent);
    next.set(athlete, step + 1);
  }
  busy.delete(athlete);
}

async function correct(): Promise<void> {
  const one = oneOf(chance, saved);
  const attempt = one?.attempts.find(({ id }) => !ended.has(id));
  if (one === undefined || attempt === undefined || busy.has(one.athleteId)) return;
  busy.add(one.athleteId);
  ended.add(attempt.id);
  const correction = correctionOf(chance, one, attempt);
  if (await send(correction)) saved.push(correction);
  else ended.delete(attempt.id);
  busy.delete(one.athleteId);
}

async function retry(): Promise<void> {
  const one = oneOf(chance, saved);
  if (one !== undefined) await send(one);
}

let full = false;

/** Takes every byte that is left on the disk, then backs up. */
async function fillUp(): Promise<void> {
  full = true;
  fillDisk(orders.folder);
  await backUp((keeper) => keeper.run());
}

async function backUp(make = (keeper: Keeper) => keeper.runWhatLacks()): Promise<void> {
  if (desk.backups !== null) await make(desk.backups);
  const key = desk.backups?.news("own").trouble?.key;
  if (key !== undefined) say({ refused: "", key });
}

/** What the program does by itself now and then: takes the log into the file, and backs up. */
async function housekeep(): Promise<void> {
  if (chance() < 0.5) return backUp();
  checkpoint();
}

function checkpoint(): void {
  try {
    bringLogIn(connectionOf(desk.store.db));
  } catch (error) {
    say({ refused: "", key: `housekeeping: ${(error as { code?: string }).code ?? String(error)}` });
  }
}

async function client(count: number): Promise<void> {
  for (let done = 0; done < count; done += 1) {
    const what = chance();
    if (what < 0.65) await enterNew();
    else if (what < 0.8) await correct();
    else if (what < 0.97) await retry();
    else await housekeep();
    await new Promise((resolve) => setImmediate(resolve));
  }
}

readSteps();
// As a page's outbox does: what got no answer is sent again, under its own id, before anything else.
for (const { sent } of known.filter((each) => !each.saved)) {
  if (await send(sent)) saved.push(sent);
}
readSteps();
const each = orders.entries === null ? Number.POSITIVE_INFINITY : orders.entries / orders.clients;
await Promise.all(Array.from({ length: orders.clients }, () => client(each)));
if (orders.rests) {
  say({ rests: true });
  await new Promise((resolve) => setTimeout(resolve, 600_000));
}
await backUp();
desk.close();
say({ closed: true });
