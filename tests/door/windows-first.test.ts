import { expect, onTestFinished, test } from "vitest";
import type { JoinedDevice } from "../../electron/domain/devices/place.ts";
import { stationDay } from "./station-day.ts";

/** The table's own windows before the devices: a volunteer at the table waits for no other screen. */

const device: JoinedDevice = { id: "d", name: "Red phone", place: { role: "station", test: "push-up" } };
const view = `app://desk/trpc/station.view?input=${encodeURIComponent(JSON.stringify({ test: "push-up" }))}`;

/** Counts the turns of the event loop from now on; the returned function tells how many so far. */
function countTurns(): () => number {
  let turn = 0;
  let counting: NodeJS.Immediate;
  const count = () => {
    turn += 1;
    counting = setImmediate(count);
  };
  count();
  onTestFinished(() => clearImmediate(counting));
  return () => turn;
}

test("what devices read at once is answered one in each turn of the event loop, and a window's between them", async () => {
  const day = await stationDay();
  const answered: string[] = [];
  const turn = countTurns();
  const ask = async (name: string, own?: JoinedDevice) => {
    const { status } = await day.handle(new Request(view), "station", "push-up", own);
    expect(status).toBe(200);
    answered.push(`${name} ${turn()}`);
  };
  const devices = [1, 2, 3, 4, 5, 6].map((nth) => ask(`device ${nth}`, device));
  await Promise.all([...devices, ask("window")]);
  expect(answered[0]).toBe("window 1");
  const turns = answered.slice(1).map((each) => Number(each.split(" ").at(-1)));
  expect(new Set(turns).size).toBe(6);
  expect(turns.toSorted((a, b) => a - b)).toEqual(turns);
  day.desk.close();
});

/** Follows the changes of a desk; the returned functions listen, and end all streams. */
function feedOf({ handle }: Awaited<ReturnType<typeof stationDay>>) {
  const gone = new AbortController();
  /** Resolves once the stream has begun, with what resolves once it has told of the calls and that was acted on. */
  async function follow(own: JoinedDevice | undefined, act: () => Promise<void>) {
    const request = new Request("app://desk/trpc/changes", { signal: gone.signal });
    const { body } = await handle(request, "station", "push-up", own);
    const stream = body?.pipeThrough(new TextDecoderStream())[Symbol.asyncIterator]();
    async function until(topic: string): Promise<void> {
      for (let text = ""; !text.includes(`"topics":["${topic}"]`); ) {
        const part = await stream?.next();
        if (part?.value === undefined) throw new Error(`The stream ended: ${text}`);
        text += part.value;
      }
    }
    await until("all");
    return { acted: until("calls").then(act) };
  }
  return { follow, end: () => gone.abort() };
}

test("a window has heard of a change, asked and been answered before any device hears of it", async () => {
  const day = await stationDay();
  const order: string[] = [];
  const feed = feedOf(day);
  const streams = [
    ...[1, 2, 3].map((nth) => feed.follow(device, async () => void order.push(`device ${nth}`))),
    feed.follow(undefined, async () => {
      await day.handle(new Request(view), "station", "push-up");
      order.push("window");
    }),
  ];
  const begun = await Promise.all(streams);
  day.desk.store.write(["calls"], () => undefined);
  await Promise.all(begun.map(({ acted }) => acted));
  feed.end();
  expect(order).toEqual(["window", "device 1", "device 2", "device 3"]);
  day.desk.close();
});

test("fourteen devices hear of a change in one turn of the event loop, and wait for no reading", async () => {
  const day = await stationDay();
  const feed = feedOf(day);
  const turnNow = countTurns();
  const turns: number[] = [];
  const follow = () => feed.follow(device, async () => void turns.push(turnNow()));
  const some = await Promise.all(Array.from({ length: 7 }, follow));
  // Between two devices something takes a while, as it does on a busy machine: their timers must not be two.
  day.desk.news.listen(() => {
    for (const end = performance.now() + 5; performance.now() < end; );
  });
  const begun = [...some, ...(await Promise.all(Array.from({ length: 7 }, follow)))];
  day.desk.store.write(["calls"], () => undefined);
  await Promise.all(begun.map(({ acted }) => acted));
  feed.end();
  expect(turns).toHaveLength(14);
  // What a stream hands on may cross into the next one.
  expect((turns.at(-1) ?? 0) - (turns[0] ?? 0)).toBeLessThan(2);
  day.desk.close();
});

test("an entry of a device waits for no reading", async () => {
  const day = await stationDay();
  const answered: string[] = [];
  const ask = async (name: string, request: Request) => {
    await day.handle(request, "station", "push-up", device);
    answered.push(name);
  };
  const body = JSON.stringify({ athleteId: day.idOf(1), test: "push-up" });
  const headers = { "content-type": "application/json" };
  const entry = new Request("app://desk/trpc/station.callAthlete", { method: "POST", body, headers });
  await Promise.all([
    ...[1, 2, 3].map((nth) => ask(`read ${nth}`, new Request(view))),
    ask("entered", entry),
  ]);
  expect(answered.indexOf("entered")).toBeLessThan(2);
  day.desk.close();
});
