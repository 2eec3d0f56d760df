import { loadavg } from "node:os";
import { setTimeout as wait } from "node:timers/promises";
import { type Counted, countedAt } from "../faults/soak-windows.ts";
import { athletes, leapOf, makeHallDay, type Turn, turnsOf } from "./hall-day.ts";
import { atTable, byKeys, flatOut, paced, typeKeys } from "./hall-enter.ts";
import {
  compareIds,
  keptIn,
  type Percentiles,
  percentilesOf,
  type Screen,
  type Timed,
  timesOf,
} from "./hall-judge.ts";
import { type Asked, type Sent, sentBy } from "./hall-page.ts";
import { ownMegabytes, type Seconds, secondsOf } from "./hall-processes.ts";
import { atPage, type Device, type Heard, hear, takeOver, takeOverBoard } from "./hall-remote.ts";
import { type AtStation, type Hall, withHall } from "./hall-table.ts";
import { withProgram } from "./windows.ts";

/** A part of the bench: what was done from when to when (ms of the machine's clock), and what it cost. */
interface Part {
  readonly name: string;
  readonly fromAt: number;
  readonly untilAt: number;
  /** Processor time by kind of process. */
  readonly seconds: Seconds;
  /** What one device asked, on average. */
  readonly asked: Asked;
  readonly load: number;
}

/** A part with the times of the entries whose tap was in it, in ms from the tap. */
export interface PartBench extends Part {
  readonly entries: number;
  readonly saved: Percentiles | null;
  readonly stations: Percentiles | null;
  readonly boards: Percentiles | null;
  /** Until the last of all screens that show it had painted it. */
  readonly all: Percentiles | null;
  readonly byName: ReadonlyMap<string, Percentiles | null>;
}

export interface HallBench {
  readonly parts: readonly PartBench[];
  /** The table's own station, from Enter to saved: once the devices have gone, and while they enter at a hall's pace. */
  readonly tableAlone: Percentiles;
  readonly tableAmong: Percentiles;
  /** The table's main process before the first device's entry and after the last, in MB. */
  readonly megabytes: { readonly before: number; readonly after: number };
  readonly sent: number;
  readonly kept: number;
  readonly lost: number;
  readonly doubled: number;
  readonly bars: typeof bars;
}

const bars = { paintedMs: 100, tableRatio: 1.1 };
/** A hall's pace: five stations with a result every five seconds each. */
const paceMs = 1_000;
const tableEveryMs = 700;

/**
 * The hall under load: the real program as the table, twelve devices and two televisions in the system's Chromium, joined
 * over https, the board's window, and 300 athletes who are checked in. The devices enter `results` results through their own
 * pages: the first ones by real keys, the others by the same events sent to the page's fields; from the Enter on everything
 * is the page's own. Each page notes when it had painted which counts. All clocks are the machine's. `elsewhere`: after the first entries one device,
 * a television, the board's window and the table's own stay on this machine, and the others are devices that have a processor
 * of their own, as in a hall; they count as painted once they have the whole answer.
 */
export function hallBench(results: number, where: Where): Promise<HallBench> {
  return withProgram(
    makeHallDay,
    (program) => withHall(program, (hall) => run(hall, turnsOf(results), where)),
    ({ parts, bySent, screens, megabytes }, file, { dayId }) => {
      const kept = keptIn(file, dayId);
      const sent = [...bySent.devices, ...bySent.table];
      const times = timesOf(bySent.devices, sent, kept, screens, athletes);
      return {
        parts: parts.map((part) => judged(part, times)),
        ...tableOf(parts, bySent.table),
        ...{ megabytes, sent: sent.flatMap(({ ids }) => ids).length, kept: kept.attempts.length },
        ...{ ...compareIds(sent, kept), bars },
      };
    },
  );
}

interface Ran {
  readonly parts: readonly Part[];
  readonly bySent: { readonly devices: readonly Sent[]; readonly table: readonly Sent[] };
  readonly screens: readonly Screen[];
  readonly megabytes: HallBench["megabytes"];
}

async function run(hall: Hall, turns: readonly Turn[], where: Where): Promise<Ran> {
  const { table, tableId } = hall;
  const before = ownMegabytes(tableId);
  const [sample, rest] = firstOfEach(turns, hall.devices.length);
  const slow = Math.min(300, Math.ceil(rest.length / 3));
  const [fast, last] = [rest.slice(0, -slow), rest.slice(-slow)];
  const leaps = leapsAtTable(slow);
  const parts: Part[] = [];
  let seats = seatsOf(hall);
  const part = async (name: string, work: () => Promise<void>) =>
    void parts.push(await partOf(seats.devices, tableId, name, work));
  const heard = heardIn(hall);
  await part("by keys", () => byKeys(hall.devices, sample));
  await typeKeys(table.page, { bib: athletes, fields: leapOf(athletes, "211") });
  if (where === "elsewhere") seats = await sendElsewhere(hall, heard());
  await part("nothing", () => wait(5_000));
  await part("flat out", () => flatOut(seats.devices, fast));
  await part("pace", async () => {
    await Promise.all([paced(seats.devices, last, paceMs), atTable(table, leaps.among, tableEveryMs)]);
  });
  await wait(2_000);
  const entered = (await Promise.all(seats.devices.map(({ sent }) => sent()))).flat();
  const screens = [...(await screensOf(seats, table)), await bareOf(hall)];
  const after = ownMegabytes(tableId);
  // At once after it, with as much in the store: the table alone.
  seats.end();
  await hall.end();
  seats = { ...seats, devices: [] };
  await part("alone", () => atTable(table, leaps.alone, tableEveryMs));
  const bySent = { devices: entered, table: await sentBy(table.page) };
  return { parts, bySent, screens, megabytes: { before, after } };
}

/** Where the devices' screens are drawn. */
export type Where = "here" | "elsewhere";

/** The devices and big screens, whoever draws them. */
interface Seats {
  readonly devices: readonly Device[];
  readonly boards: readonly { readonly name: string; counted(): Promise<readonly Counted[]> }[];
  end(): void;
}

function seatsOf({ devices, boards }: Pick<Hall, "devices" | "boards">): Seats {
  return {
    devices: devices.map(atPage),
    boards: boards.map((page, index) => ({
      name: index === 0 ? "the board's window" : "a television",
      counted: () => countedAt(page),
    })),
    end: () => undefined,
  };
}

/** Listens at all devices and televisions; the returned function tells what each said, in their order. */
function heardIn({ devices, boards }: Hall): () => { devices: readonly Heard[]; boards: readonly Heard[] } {
  const atDevices = devices.map(({ page }) => hear(page));
  const atBoards = boards.map(hear);
  return () => ({ devices: atDevices.map((tell) => tell()), boards: atBoards.map((tell) => tell()) });
}

/** One phone at the leap, the board's window and one television stay on this machine; all others are drawn elsewhere. */
async function sendElsewhere(hall: Hall, heard: ReturnType<ReturnType<typeof heardIn>>): Promise<Seats> {
  const stays = hall.devices.findIndex(({ test }) => test === hall.table.test);
  const devices = await Promise.all(
    hall.devices.map(async (device, index): Promise<Device & { end(): void }> => {
      const own = heard.devices[index];
      return own === undefined || index === stays
        ? { ...atPage(device), end() {} }
        : takeOver(device, own, hall.port);
    }),
  );
  const { boards } = seatsOf({ devices: [], boards: hall.boards.slice(0, 2) });
  const away = await Promise.all(
    hall.boards.flatMap((page, index) => {
      const own = heard.boards[index];
      return own === undefined || index < 2 ? [] : [takeOverBoard(page, own, hall.port)];
    }),
  );
  return {
    devices,
    boards: [
      ...boards,
      ...away.map(({ counted }) => ({ name: "told elsewhere", counted: async () => counted })),
    ],
    end(): void {
      for (const each of [...devices, ...away]) each.end();
    },
  };
}

/** What all screens painted, or what the devices elsewhere had been told in whole; the table's own station, too. */
function screensOf({ devices, boards }: Seats, table: AtStation): Promise<Screen[]> {
  const stations = [...devices, { ...atPage(table), name: "the table's station" }].map(
    async ({ name, test, shown }): Promise<Screen> => ({ name, is: "station", test, shown: await shown() }),
  );
  const counts = boards.map(
    async ({ name, counted }): Promise<Screen> => ({ name, is: "board", counted: await counted() }),
  );
  return Promise.all([...stations, ...counts]);
}

async function bareOf({ bare }: Hall): Promise<Screen> {
  return { name: "a bare page", is: "bare", counted: await countedAt(bare) };
}

/** The first of each device, by which it is asked for initials, and all others. */
function firstOfEach(turns: readonly Turn[], devices: number): [Turn[], Turn[]] {
  const first = new Set(
    Array.from({ length: devices }, (_none, device) => turns.find((turn) => turn.device === device)),
  );
  return [turns.filter((turn) => first.has(turn)), turns.filter((turn) => !first.has(turn))];
}

/** Whose further leap the table enters, one each: among the devices, and alone after they left. */
function leapsAtTable(among: number): Readonly<Record<"among" | "alone", readonly number[]>> {
  const half = Math.min(among, Math.floor((athletes - 1) / 2));
  const from = (first: number) => Array.from({ length: half }, (_none, nth) => first - nth);
  return { among: from(athletes - 1), alone: from(athletes - 1 - half) };
}

const now = () => performance.timeOrigin + performance.now();

async function partOf(
  devices: readonly Device[],
  tableId: number,
  name: string,
  work: () => Promise<void>,
): Promise<Part> {
  const look = async () => ({
    at: now(),
    seconds: secondsOf(tableId),
    asked: await Promise.all(devices.map(({ asked }) => asked())).then((all) =>
      all.map((each) => ({ ...each })),
    ),
  });
  const before = await look();
  await work();
  const after = await look();
  const kinds = Object.entries(after.seconds) as [keyof Seconds, number][];
  const sum = (of: keyof Asked) =>
    after.asked.reduce((all, each, index) => all + each[of] - (before.asked[index]?.[of] ?? 0), 0) /
    Math.max(1, devices.length);
  return {
    name,
    ...{ fromAt: before.at, untilAt: after.at },
    seconds: Object.fromEntries(kinds.map(([kind, end]) => [kind, end - before.seconds[kind]])) as Seconds,
    asked: { requests: sum("requests"), bytes: sum("bytes") },
    load: loadavg()[0] ?? Number.NaN,
  };
}

function judged(part: Part, times: readonly Timed[]): PartBench {
  const own = times.filter(({ tapAt }) => tapAt >= part.fromAt && tapAt < part.untilAt);
  const last = ({ stationsMs, boardsMs }: Timed) =>
    stationsMs === null ? boardsMs : Math.max(stationsMs, boardsMs ?? 0);
  const names = [...new Set(own.flatMap(({ byName }) => [...byName.keys()]))].sort();
  return {
    ...{ ...part, entries: own.length },
    saved: percentilesOf(own.map(({ savedMs }) => savedMs)),
    stations: percentilesOf(own.map(({ stationsMs }) => stationsMs)),
    boards: percentilesOf(own.map(({ boardsMs }) => boardsMs)),
    all: percentilesOf(own.map(last)),
    byName: new Map(
      names.map((name) => [name, percentilesOf(own.map(({ byName }) => byName.get(name) ?? null))]),
    ),
  };
}

function tableOf(
  parts: readonly Part[],
  sent: readonly Sent[],
): Pick<HallBench, "tableAlone" | "tableAmong"> {
  const within = (name: string) => {
    const of = parts.filter((part) => part.name === name);
    const own = sent.filter(({ tapAt }) =>
      of.some(({ fromAt, untilAt }) => tapAt >= fromAt && tapAt < untilAt),
    );
    const found = percentilesOf(own.map(({ savedAt, tapAt }) => savedAt - tapAt));
    if (found === null) throw new Error(`The table entered nothing while ${name}.`);
    return found;
  };
  return { tableAlone: within("alone"), tableAmong: within("pace") };
}
