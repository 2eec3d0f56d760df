import { randomUUID } from "node:crypto";
import { Agent, type RequestOptions, request } from "node:https";
import type { Page } from "@playwright/test";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { type Changed, isTouched } from "../../renderer/app/topics.ts";
import { type Counted, countedAt } from "../faults/soak-windows.ts";
import type { Turn } from "./hall-day.ts";
import { type Asked, askedBy, enterAt, type Sent, type Shown, sentBy, shownBy } from "./hall-page.ts";
import type { AtStation } from "./hall-table.ts";

/** A reading that a page asks for again whenever it may have changed. */
interface Reading {
  readonly path: string;
  readonly input: unknown;
}

/** The body of an entry, of which only the attempts change from athlete to athlete. */
interface Entry {
  readonly attempts: readonly { readonly seen: object }[];
}

/** What a page at a device said to the table while somebody entered a result at it. */
export interface Heard {
  readonly readings: readonly Reading[];
  /** The entry's own request for the athlete, and the results, a body for each time Enter saved. */
  readonly find: Reading | undefined;
  readonly bodies: readonly Entry[];
}

/** A device at a station, in the bench's hands. */
export interface Device {
  /** What kind of screen it is. */
  readonly name: string;
  readonly test: TestCode;
  readonly asked: () => Promise<Asked>;
  readonly shown: () => Promise<readonly Shown[]>;
  readonly sent: () => Promise<readonly Sent[]>;
  enter(turn: Turn): Promise<void>;
}

/** A device whose screen is elsewhere. */
interface Remote {
  readonly asked: Asked;
  end(): void;
}

const now = () => performance.timeOrigin + performance.now();
/** As often as a page says that it is there. */
const hereEveryMs = 5_000;

/** Listens to what a page says from now on; the returned function tells what it heard. */
export function hear(page: Page): () => Heard {
  const read: Reading[] = [];
  const bodies: Entry[] = [];
  page.on("request", (asked) => {
    const { pathname, searchParams } = new URL(asked.url());
    if (!pathname.startsWith("/trpc/")) return;
    const paths = pathname.slice("/trpc/".length).split(",");
    const body = asked.postDataJSON() as Record<string, unknown> | null;
    const inputs = body ?? (JSON.parse(searchParams.get("input") ?? "{}") as Record<string, unknown>);
    for (const [index, path] of paths.entries()) {
      const input = inputs[index];
      if (path === "station.enter") bodies.push(input as Entry);
      else if (body === null) read.push({ path, input });
    }
  });
  return () => heardIn(read, bodies);
}

/** Asked once for an entry, and not again when something changes. */
const askedOnce = ["changes", "station.find", "station.lacks"];

function heardIn(read: readonly Reading[], bodies: Heard["bodies"]): Heard {
  const different = new Map(read.map((reading) => [JSON.stringify(reading), reading]));
  const readings = [...different.values()].filter(({ path }) => !askedOnce.includes(path));
  return { readings, find: read.find(({ path }) => path === "station.find"), bodies };
}

/** A device that is a page of this machine's browser. */
export function atPage({ page, test }: AtStation): Device {
  return {
    name: "a device's page",
    test,
    asked: () => askedBy(page),
    shown: () => shownBy(page),
    sent: () => sentBy(page),
    enter: (turn) => enterAt(page, turn),
  };
}

/**
 * Puts in the place of a page, which is closed, a device whose screen is elsewhere, as in a hall, where each has a processor
 * of its own: it has the page's place, cookie, requests and connections, reads again what the page read, whenever the table
 * tells of a change, and sends what is typed. Drawing alone it has no part of.
 */
export async function takeOver(
  { page, test }: AtStation,
  heard: Heard,
  port: number,
): Promise<Device & { end(): void }> {
  const [shown, sent] = [[...(await shownBy(page))], [...(await sentBy(page))]];
  const line = await lineOf(page, port);
  const remote = await follow(line, heard.readings, (answers) => {
    const counts = answers.get("station.view")?.counts;
    if (counts !== undefined) shown.push({ ...counts, at: now() });
  });
  let nth = 0;
  const enter = async ({ bib }: Turn) => {
    const input = { ...(heard.find?.input as object), bib: `${bib}` };
    const found = (await line.query([{ path: "station.find", input }])).get("station.find");
    const body = heard.bodies[nth++ % heard.bodies.length];
    const attempts = (body?.attempts ?? []).map(({ seen }) => ({
      id: randomUUID(),
      seen: turned(seen, found?.taken),
    }));
    const tapAt = now();
    await line.enter({ ...body, attempts, athleteId: found?.who?.athleteId });
    sent.push({ ids: attempts.map(({ id }) => id), tapAt, savedAt: now() });
  };
  const told = { asked: async () => remote.asked, shown: async () => shown, sent: async () => sent };
  return { name: "told elsewhere", test, ...told, enter, end: remote.end };
}

/** The other way round where one is already entered. */
function turned(seen: object, taken: Data["taken"]): object {
  return "direction" in seen ? { ...seen, direction: taken?.cw === undefined ? "cw" : "ccw" } : seen;
}

/** The same for a television; `counted` grows as a page's does. */
export async function takeOverBoard(
  page: Page,
  { readings }: Heard,
  port: number,
): Promise<{ readonly counted: readonly Counted[]; end(): void }> {
  const counted = [...(await countedAt(page))];
  const remote = await follow(await lineOf(page, port), readings, (answers) => {
    const totals = answers.get("board.view")?.totals;
    if (totals !== undefined) counted.push({ count: totals.testsDone, at: now() });
  });
  return { counted, end: remote.end };
}

/** Closes a page and keeps its place on the network. */
async function lineOf(page: Page, port: number): Promise<Line> {
  const cookies = await page.context().cookies();
  await page.context().close();
  return lineTo(port, cookies.map(({ name, value }) => `${name}=${value}`).join("; "));
}

interface Line {
  readonly asked: { requests: number; bytes: number };
  /** Answers by path. */
  query(readings: readonly Reading[]): Promise<ReadonlyMap<string, Data>>;
  enter(body: object): Promise<void>;
  here(): Promise<void>;
  /** Hands on every change that the table tells, until the returned function is called. */
  changes(hear: (changed: Changed) => void): () => void;
}

/** The parts of answers that are looked at here. */
interface Data {
  readonly counts?: { readonly done: number; readonly later: number };
  readonly totals?: { readonly testsDone: number };
  readonly who?: { readonly athleteId: number };
  readonly taken?: Readonly<Record<string, number>>;
}

/** Connections as a browser keeps them: at most six to one host (Chromium's own limit, from memory). */
function lineTo(port: number, cookie: string): Line {
  const asked = { requests: 0, bytes: 0 };
  const origin = `https://127.0.0.1:${port}`;
  const agent = new Agent({ keepAlive: true, maxSockets: 6 });
  const to: RequestOptions = { host: "127.0.0.1", port, agent, rejectUnauthorized: false };
  const own = { cookie, origin, "sec-fetch-site": "same-origin", "content-type": "application/json" };
  const ask = (path: string, body?: unknown) =>
    new Promise<string>((resolve, reject) => {
      const method = body === undefined ? "GET" : "POST";
      const asking = request({ ...to, path, method, headers: own }, (answer) => {
        let text = "";
        answer.setEncoding("utf8").on("data", (part: string) => (text += part));
        answer.on("error", reject).on("end", () => {
          asked.requests += 1;
          asked.bytes += Buffer.byteLength(text);
          if (answer.statusCode === 200) resolve(text);
          else reject(new Error(`${path.slice(0, 80)}: ${answer.statusCode} ${text.slice(0, 200)}`));
        });
      });
      asking.on("error", reject).end(body === undefined ? undefined : JSON.stringify(body));
    });
  return {
    asked,
    async query(readings) {
      const paths = readings.map(({ path }) => path).join(",");
      const inputs = Object.fromEntries(readings.map(({ input }, index) => [index, input]));
      const text = await ask(`/trpc/${paths}?batch=1&input=${encodeURIComponent(JSON.stringify(inputs))}`);
      const answers = JSON.parse(text) as { result: { data: Data } }[];
      return new Map(answers.map(({ result }, index) => [readings[index]?.path ?? "", result.data]));
    },
    async enter(body) {
      const text = await ask("/trpc/station.enter?batch=1", { 0: body });
      if (!text.includes('"saved"')) throw new Error(text);
    },
    here: async () => void (await ask("/device/here", { waiting: 0, battery: null })),
    changes(hear) {
      const headers = { ...own, accept: "text/event-stream" };
      const asking = request({ ...to, agent: false, path: "/trpc/changes", headers }, (answer) => {
        let text = "";
        answer.setEncoding("utf8").on("data", (part: string) => {
          const lines = (text + part).split("\n");
          text = lines.pop() ?? "";
          for (const each of lines) {
            const told = each.startsWith("data: {") ? (JSON.parse(each.slice(6)) as Told) : null;
            if (told?.topics)
              hear({ topics: new Set(told.topics), tests: told.tests ? new Set(told.tests) : null });
          }
        });
      });
      asking.on("error", () => undefined).end();
      return () => asking.destroy();
    },
  };
}

interface Told {
  readonly topics?: readonly string[];
  readonly tests?: readonly string[] | null;
}

/** As `followChanges` of the pages does: what is touched is read at once, and what comes meanwhile is read after it. */
async function follow(
  line: Line,
  readings: readonly Reading[],
  see: (answers: ReadonlyMap<string, Data>) => void,
): Promise<Remote> {
  let waiting: Changed[] = [];
  let isReading = false;
  async function flush(): Promise<void> {
    if (isReading) return;
    isReading = true;
    while (waiting.length > 0) {
      const changes = waiting;
      waiting = [];
      const touched = readings.filter((each) => changes.some((changed) => isTouched(askedOf(each), changed)));
      if (touched.length > 0) see(await line.query(touched));
    }
    isReading = false;
  }
  const stop = line.changes((changed) => {
    waiting.push(changed);
    void flush();
  });
  see(await line.query(readings));
  const timer = setInterval(() => void line.here(), hereEveryMs);
  return {
    asked: line.asked,
    end() {
      clearInterval(timer);
      stop();
    },
  };
}

function askedOf({ path, input }: Reading) {
  return { path: path.split("."), test: (input as { readonly test?: string } | undefined)?.test };
}
