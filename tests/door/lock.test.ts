import { expect, test } from "vitest";
import { keepInMemory, type LockKeep } from "../../electron/lock/kept.ts";
import { calls } from "../../electron/store/tables/calls.ts";
import { refusalOf, type TestClock, type TestDesk, testClock, testDesk } from "./desk.ts";
import { by, hallAt, startedHeat } from "./heat-hall.ts";

const pin = "271828";
const wrong = "314159";

/** A desk whose window is whoever the lock says, as the shell asks it. */
function locking(keep = keepInMemory(), clock: TestClock = testClock()) {
  const made = testDesk(":memory:", clock, { lock: keep });
  const page = () => {
    const { role, station } = made.desk.lock.who();
    return made.as(role, station ?? undefined);
  };
  return { ...made, keep, page };
}

async function withPin(keep?: LockKeep, clock?: TestClock) {
  const made = locking(keep, clock);
  expect(await made.page().lock.setPin({ pin })).toEqual({ outcome: "right" });
  return made;
}

const handOverToCore = (made: ReturnType<typeof locking>) =>
  made.page().lock.handOver({ to: { role: "station", test: "core" } });

test("without a PIN the desk is the organiser's, nothing locks it, and it can't be handed over", async () => {
  const { desk, page, clock } = locking();
  clock.pass(600);
  desk.lock.lookAtIdle(false);
  desk.lock.lock("sleep");
  expect(desk.lock.who()).toEqual({ role: "organiser", station: null });
  expect((await refusalOf(page().lock.lockNow())).key).toBe("lock.noPin");
  const to = { role: "check-in" } as const;
  expect((await refusalOf(page().lock.handOver({ to }))).key).toBe("lock.noPin");
  expect(await page().lock.standing()).toEqual({
    post: { role: "organiser" },
    ...{ locked: false, pinSet: false, idleMinutes: 10, waitMs: 0, unreadable: false, folder: null },
  });
});

test("handed over to a station, the desk is that station's until the PIN is given", async () => {
  const made = await withPin();
  await handOverToCore(made);
  expect(made.desk.lock.who()).toEqual({ role: "station", station: "core" });
  expect((await refusalOf(made.page().day.close({ dayId: 1 }))).key).toBe("door.forbidden");
  expect((await refusalOf(made.page().lock.handOver({ to: { role: "check-in" } }))).key).toBe(
    "door.forbidden",
  );
  expect((await refusalOf(made.page().lock.setPin({ pin: "142857" }))).key).toBe("door.forbidden");
  expect(await made.page().lock.unlock({ pin: wrong })).toEqual({ outcome: "wrong", waitMs: 0 });
  expect(await made.page().lock.unlock({ pin })).toEqual({ outcome: "right" });
  expect(made.desk.lock.who().role).toBe("organiser");
});

test("nobody can be handed the organiser's place", async () => {
  const made = await withPin();
  const call = made.page().lock.handOver({ to: { role: "organiser" } as never });
  await expect(call).rejects.toThrow();
  await expect(made.page().lock.handOver({ to: { role: "board" } as never })).rejects.toThrow();
  expect(made.desk.lock.who().role).toBe("organiser");
});

test("a PIN that is easy to guess is refused with what to do, and nothing is set", async () => {
  const { page } = locking();
  expect((await refusalOf(page().lock.setPin({ pin: "12345" }))).key).toBe("lock.pin.short");
  expect((await refusalOf(page().lock.setPin({ pin: "123456" }))).key).toBe("lock.pin.easy");
  expect((await page().lock.standing()).pinSet).toBe(false);
});

test("changing or removing a PIN takes the one before, and a wrong one counts", async () => {
  const made = await withPin();
  const change = (current: string | null) => made.page().lock.setPin({ pin: "142857", current });
  expect((await change(null)).outcome).toBe("wrong");
  expect((await change(wrong)).outcome).toBe("wrong");
  expect(await made.page().lock.removePin({ current: wrong })).toEqual({ outcome: "wrong", waitMs: 5000 });
  expect(await change(pin)).toEqual({ outcome: "wait", waitMs: 5000 });
  made.clock.tick(5000);
  expect((await change(pin)).outcome).toBe("right");
  expect((await made.page().lock.removePin({ current: "142857" })).outcome).toBe("right");
  expect((await made.page().lock.standing()).pinSet).toBe(false);
});

/** Gives so many wrong PINs, each as soon as it is looked at. */
async function giveWrong(made: ReturnType<typeof locking>, times: number): Promise<number> {
  let waitMs = 0;
  for (let count = 0; count < times; count += 1) {
    made.clock.tick(waitMs);
    const tried = await made.page().lock.unlock({ pin: wrong });
    if (tried.outcome !== "wrong") throw new Error(`This try was ${tried.outcome}.`);
    ({ waitMs } = tried);
  }
  return waitMs;
}

test("each wrong PIN waits longer, the right one waits too, and it takes the count away", async () => {
  const made = await withPin();
  await handOverToCore(made);
  expect(await giveWrong(made, 5)).toBe(20_000);
  made.clock.tick(19_999);
  expect(await made.page().lock.unlock({ pin })).toEqual({ outcome: "wait", waitMs: 1 });
  made.clock.tick(1);
  expect((await made.page().lock.unlock({ pin })).outcome).toBe("right");
  await handOverToCore(made);
  expect(await giveWrong(made, 2)).toBe(0);
});

test("many tries at once are one try after the other", async () => {
  const made = await withPin();
  await handOverToCore(made);
  await giveWrong(made, 3);
  made.clock.tick(5000);
  const tries = await Promise.all(Array.from({ length: 20 }, () => made.page().lock.unlock({ pin: wrong })));
  expect(tries.filter(({ outcome }) => outcome === "wrong")).toHaveLength(1);
});

test("post, wait and count are there after a restart, whatever somebody did to the clock", async () => {
  const made = await withPin();
  await handOverToCore(made);
  await giveWrong(made, 5);
  made.clock.tick(8_000);
  // Somebody sets the clock on by ten years.
  made.clock.at = new Date("2036-11-14T09:00:00Z");
  const again = locking(made.keep, made.clock);
  expect(again.desk.lock.who()).toEqual({ role: "station", station: "core" });
  expect(await again.page().lock.unlock({ pin })).toEqual({ outcome: "wait", waitMs: 12_000 });
  // The machine starts anew: what passed is not known, so the whole wait begins again, once.
  made.clock.monotonic = { ms: 60_000, boot: "other" };
  const booted = locking(made.keep, made.clock);
  expect(await booted.page().lock.unlock({ pin })).toEqual({ outcome: "wait", waitMs: 20_000 });
  made.clock.tick(15_000);
  const onceMore = locking(made.keep, made.clock);
  expect(await onceMore.page().lock.unlock({ pin })).toEqual({ outcome: "wait", waitMs: 5_000 });
  made.clock.tick(5_000);
  expect((await onceMore.page().lock.unlock({ pin })).outcome).toBe("right");
});

test("ending the program while a PIN is looked at wins no try", async () => {
  const made = await withPin();
  await handOverToCore(made);
  await giveWrong(made, 2);
  const trying = made.desk.lock.unlock(wrong);
  const killed = locking(made.keep, made.clock);
  expect(killed.desk.lock.standing().waitMs).toBe(5000);
  await trying;
});

test("with a PIN the organiser's desk starts locked, and a locked desk may do nothing but be opened", async () => {
  const made = await withPin();
  const again = locking(made.keep, made.clock);
  expect(again.desk.lock.who().role).toBe("locked");
  expect((await refusalOf(again.page().day.current())).key).toBe("door.locked");
  expect((await again.page().lock.unlock({ pin })).outcome).toBe("right");
  expect((await again.page().day.current()).kind).toBe("own");
});

test("nobody at the desk for ten minutes locks it; a write, a touch and a running heat do not count as nobody", async () => {
  const made = await withPin();
  const { clock, desk } = made;
  const look = (busy = false) => {
    desk.lock.lookAtIdle(busy);
    return desk.lock.who().role;
  };
  clock.pass(9.9);
  expect(look()).toBe("organiser");
  desk.lock.touch();
  clock.pass(9.9);
  expect(look()).toBe("organiser");
  await made.page().board.hide({ hidden: true });
  clock.pass(9.9);
  expect(look()).toBe("organiser");
  clock.pass(60);
  expect(look(true)).toBe("organiser");
  clock.pass(9.9);
  expect(look()).toBe("organiser");
  clock.pass(0.1);
  expect(look()).toBe("locked");
});

test("the idle time can be set, and a volunteer's desk never locks by itself", async () => {
  const made = await withPin();
  await made.page().lock.setIdle({ minutes: 2 });
  await expect(made.page().lock.setIdle({ minutes: 0 })).rejects.toThrow();
  await handOverToCore(made);
  made.clock.pass(1000);
  made.desk.lock.lookAtIdle(false);
  made.desk.lock.lock("sleep");
  expect(made.desk.lock.who().role).toBe("station");
  await made.page().lock.unlock({ pin });
  made.clock.pass(2);
  made.desk.lock.lookAtIdle(false);
  expect(made.desk.lock.who().role).toBe("locked");
});

test("a clock that somebody sets locks nothing", async () => {
  const made = await withPin();
  made.clock.at = new Date("2030-01-01T00:00:00Z");
  made.desk.lock.lookAtIdle(false);
  expect(made.desk.lock.who().role).toBe("organiser");
});

test("a desk is neither locked nor handed to another station while a heat runs on it", async () => {
  const hall = await hallAt("core");
  const door = hall.as("organiser").lock;
  await door.setPin({ pin });
  const heatId = await startedHeat(hall, "core", 2);
  expect((await refusalOf(door.lockNow())).key).toBe("lock.heatRuns");
  expect((await refusalOf(door.handOver({ to: { role: "check-in" } }))).key).toBe("lock.heatElsewhere");
  const agility = { role: "station", test: "agility" } as const;
  expect((await refusalOf(door.handOver({ to: agility }))).key).toBe("lock.heatElsewhere");
  await door.handOver({ to: { role: "station", test: "core" } });
  await hall.as("station", "core").heat.callOff({ heatId, by, reason: "alarm" });
});

test("a station's desk keys, corrects and runs heats of its own test alone, whatever names the other", async () => {
  const hall = await hallAt("core");
  const own = hall.as("station", "core");
  const other = hall.as("station", "agility");
  const { queue } = await own.station.view({ test: "core" });
  const [first] = queue;
  if (first === undefined) throw new Error("Nobody waits.");
  const { athleteId } = first.who;
  const attempt = { id: crypto.randomUUID(), seen: { held: 61_000 } };
  const seen = { athleteId, test: "core" as const, attempts: [attempt], by: "QA", sure: true };
  const refused = async (call: Promise<unknown>) => (await refusalOf(call)).key;
  expect(await refused(other.station.enter(seen))).toBe("door.otherStation");
  expect((await own.station.enter(seen)).outcome).toBe("saved");
  const slip = { attemptId: attempt.id, reason: "slip", by: "QA" };
  expect(await refused(other.station.void(slip))).toBe("door.otherStation");
  expect(await refused(other.station.history({ attemptId: attempt.id }))).toBe("door.otherStation");
  const fresh = [{ id: crypto.randomUUID(), seen: {} }];
  const lie = { ...seen, test: "agility" as const, replaces: slip, attempts: fresh };
  expect(await refused(other.station.enter(lie))).toBe("door.otherStation");
  await own.station.void(slip);
  await own.station.callAthlete({ athleteId, test: "core" });
  expect(await refused(other.station.uncall({ athleteId, test: "core" }))).toBe("door.otherStation");
  await other.station.uncall({ athleteId, test: "agility" });
  expect(calls(hall.desk.store.db, hall.dayId)).toMatchObject([{ athleteId, test: "core" }]);
  await own.station.uncall({ athleteId, test: "core" });
  expect(calls(hall.desk.store.db, hall.dayId)).toEqual([]);
  const heatId = await startedHeat(hall, "core", 2);
  const end = { heatId, by, reason: "no" };
  expect(await refused(other.heat.callOff(end))).toBe("door.otherStation");
  const gather = { test: "agility", heatId, lanes: 2, by } as const;
  expect(await refused(other.heat.gather(gather))).toBe("door.otherStation");
  await own.heat.callOff(end);
});

test("a station hears no year of birth, no consent, no category and no reason for a skip of anybody", async () => {
  const hall = await hallAt("core");
  const own = hall.as("station", "core");
  await startedHeat(hall, "core", 2);
  const skipped = { athleteId: hall.idOf(6), test: "core" } as const;
  await hall.as("organiser").station.skip({ ...skipped, reason: "Sore wrist", by });
  const told = JSON.stringify([
    await refusalOf(own.station.find({ test: "core", bib: "6" })),
    await refusalOf(own.station.callAthlete(skipped)),
    await refusalOf(
      own.heat.place({ test: "core", heatId: crypto.randomUUID(), lanes: 4, by, who: { bib: "6" } }),
    ),
    await own.station.view({ test: "core" }),
    await own.heat.view({ test: "core" }),
    await own.day.current(),
    await own.day.protocols(),
    await own.noise.get(),
    await own.board.view(),
    await own.lock.standing(),
  ]);
  expect(told).not.toMatch(/birth|category|guardian|"share":|"asked":|Sore wrist/i);
  // Who decided it is told why at the desk itself.
  expect((await hall.as("organiser").station.view({ test: "core" })).skipped).toMatchObject([
    { reason: "Sore wrist" },
  ]);
});

test("in the demonstration no PIN is set, and one that is there holds", async () => {
  const tried = locking();
  await tried.page().day.openDemo();
  expect((await refusalOf(tried.page().lock.setPin({ pin }))).key).toBe("lock.inDemo");
  const made = await withPin();
  await made.page().day.openDemo();
  await made.page().lock.lockNow();
  expect((await refusalOf(made.page().day.leaveDemo())).key).toBe("door.locked");
  expect((await made.page().lock.unlock({ pin })).outcome).toBe("right");
});

test("the log says what became of the lock and holds no PIN", async () => {
  const made = await withPin();
  await made.page().lock.lockNow();
  await made.page().lock.unlock({ pin: wrong });
  await made.page().lock.unlock({ pin });
  await handOverToCore(made);
  await made.page().lock.unlock({ pin });
  const log = await made.page().lock.log();
  expect(log.map(({ at: _, ...what }) => what)).toEqual([
    { what: "opened" },
    { what: "handed-over", to: "station", test: "core" },
    { what: "opened" },
    { what: "wrong", count: 1 },
    { what: "locked", why: "hand" },
    { what: "pin-set" },
  ]);
  const kept = `${made.keep.read()}${made.keep.notes().join("\n")}`;
  expect(kept).not.toContain(pin);
  expect(kept).not.toContain(wrong);
});

test("a forgotten PIN goes when the machine's account asks, and the log keeps that", async () => {
  const made = await withPin();
  await handOverToCore(made);
  await giveWrong(made, 4);
  const files = ["forget-pin"];
  const keep = { ...made.keep, takeForgetting: () => files.pop() !== undefined };
  const again = locking(keep, made.clock);
  expect(again.desk.lock.standing()).toMatchObject({ pinSet: false, locked: false, waitMs: 0 });
  expect(again.desk.lock.who().role).toBe("organiser");
  expect((await again.page().lock.log())[0]).toMatchObject({ what: "forgotten" });
  expect(locking(keep, made.clock).desk.lock.standing().pinSet).toBe(false);
});

test("where the file of a forgotten PIN goes is for the organiser, and for whom no PIN helps", async () => {
  const made = await withPin({ ...keepInMemory(), folder: "/data" });
  expect(made.desk.lock.standing().folder).toBe("/data");
  made.desk.lock.lock("hand");
  expect(made.desk.lock.standing().folder).toBeNull();
  await made.page().lock.unlock({ pin });
  await handOverToCore(made);
  expect(made.desk.lock.standing().folder).toBeNull();
  made.keep.write("{");
  const shut = locking(made.keep, made.clock);
  expect(shut.desk.lock.standing()).toMatchObject({ locked: true, folder: "/data" });
  expect((await refusalOf(shut.page().lock.unlock({ pin }))).values).toEqual({ folder: "/data" });
});

test.each([
  ["damaged", (keep: LockKeep) => keep.write("{")],
  ["cut off", (keep: LockKeep) => keep.write((keep.read() ?? "").slice(0, 80))],
  ["of another program", (keep: LockKeep) => keep.write("{}")],
  ["empty", (keep: LockKeep) => keep.write("")],
  [
    "without the PIN that its log knows of",
    (keep: LockKeep) => keep.write(JSON.stringify({ ...JSON.parse(keep.read() ?? ""), pin: null })),
  ],
])("a kept lock that is %s stays shut, and the file of a forgotten PIN opens it", async (_what, spoil) => {
  const made = await withPin();
  spoil(made.keep);
  const shut = locking(made.keep, made.clock);
  expect(shut.desk.lock.standing()).toMatchObject({ locked: true, unreadable: true });
  expect((await refusalOf(shut.page().lock.unlock({ pin }))).key).toBe("lock.unreadable");
  expect((await refusalOf(shut.page().day.current())).key).toBe("door.locked");
  expect(locking({ ...made.keep, takeForgetting: () => true }, made.clock).desk.lock.who().role).toBe(
    "organiser",
  );
});

test("a kept lock that is gone stays shut where the log knows of a PIN", async () => {
  const made = await withPin();
  const gone: LockKeep = { ...keepInMemory(), notes: made.keep.notes };
  expect(locking(gone).desk.lock.standing().unreadable).toBe(true);
  await made.page().lock.removePin({ current: pin });
  expect(locking(gone).desk.lock.standing()).toMatchObject({ unreadable: false, locked: false });
});

type Locking = ReturnType<typeof locking>;

test.each([
  ["removed", async (made: Locking) => void (await made.page().lock.removePin({ current: pin }))],
  ["forgotten", async (made: Locking) => void locking({ ...made.keep, takeForgetting: () => true })],
])("a PIN that was %s stays away, also where the log could not say so", async (_how, take) => {
  const made = await withPin();
  const notes = made.keep.notes().slice();
  await take(made);
  const silent = { ...made.keep, notes: () => notes };
  expect(locking(silent).desk.lock.standing()).toMatchObject({ unreadable: false, pinSet: false });
  const again = locking(silent);
  await again.page().lock.setPin({ pin });
  made.keep.write(JSON.stringify({ ...JSON.parse(made.keep.read() ?? ""), pin: null }));
  expect(locking(silent).desk.lock.standing().unreadable).toBe(true);
});

/** A disk on which nothing more can be written. */
function full(keep: LockKeep): LockKeep {
  function fail(): never {
    throw Object.assign(new Error("no space left"), { code: "ENOSPC" });
  }
  return { ...keep, write: fail, note: fail };
}

test("on a full disk nothing is set or handed over, and a desk can still be opened, with the same waits", async () => {
  const first = locking(full(keepInMemory()));
  expect((await refusalOf(first.page().lock.setPin({ pin }))).key).toBe("lock.notKept");
  expect(first.desk.lock.standing().pinSet).toBe(false);
  const made = await withPin();
  const stuck = locking(full(made.keep), made.clock);
  expect(await giveWrong(stuck, 4)).toBe(10_000);
  stuck.clock.tick(10_000);
  expect((await stuck.page().lock.unlock({ pin })).outcome).toBe("right");
  const to = { role: "check-in" } as const;
  expect((await refusalOf(stuck.page().lock.handOver({ to }))).key).toBe("lock.notKept");
  expect(stuck.desk.lock.who().role).toBe("organiser");
});

test("windows are told of every change of the lock", async () => {
  const made: TestDesk = await withPin();
  const heard: unknown[] = [];
  made.desk.news.listen(({ topics }) => heard.push(...topics));
  made.desk.lock.handOver({ role: "check-in" });
  await made.desk.lock.unlock(wrong);
  await made.desk.lock.unlock(pin);
  made.desk.lock.lock("idle");
  expect(heard).toEqual(["lock", "lock", "lock", "lock"]);
});
