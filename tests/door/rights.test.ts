import { beforeEach, expect, test } from "vitest";
import type { Handle } from "../../electron/api/handler.ts";
import { appRouter } from "../../electron/api/router.ts";
import {
  callerAt,
  type DevicePlace,
  devicePlaceSchema,
  type JoinedDevice,
} from "../../electron/domain/devices/place.ts";
import { type Role, roles } from "../../electron/domain/lock/roles.ts";
import type { TestCode } from "../../electron/domain/tests/registry.ts";
import { testDesk } from "./desk.ts";
import { readRights } from "./rights.ts";

const rights = readRights();
const procedures = Object.entries(
  appRouter._def.procedures as unknown as Record<string, { _def: { type: string } }>,
).map(([path, { _def }]) => ({ path, type: _def.type }));

let handle: Handle;
beforeEach(() => {
  ({ handle } = testDesk());
});

interface Answer {
  readonly refused: boolean;
  readonly text: string;
}

/** Calls a procedure as a window does, with an input that is good for nothing: the role is asked about first. */
async function ask(
  path: string,
  type: string,
  who: Role,
  station: TestCode | null,
  device?: JoinedDevice,
): Promise<Answer> {
  const json = JSON.stringify({});
  const url = `http://desk/trpc/${path}`;
  const asked = `${url}?input=${encodeURIComponent(json)}`;
  if (type === "subscription") return listen(new Request(asked), who, station, device);
  const headers = { "content-type": "application/json" };
  const request =
    type === "query" ? new Request(asked) : new Request(url, { method: "POST", headers, body: json });
  const response = await handle(request, who, station, device);
  return { refused: response.status === 403, text: await response.text() };
}

/** A stream is refused inside itself: reads it up to its first word. */
async function listen(
  request: Request,
  who: Role,
  station: TestCode | null,
  device?: JoinedDevice,
): Promise<Answer> {
  request.headers.set("accept", "text/event-stream");
  const stop = new AbortController();
  const response = await handle(new Request(request, { signal: stop.signal }), who, station, device);
  let text = "";
  for await (const chunk of response.body ?? []) {
    text += new TextDecoder().decode(chunk);
    if (/^event: serialized-error[\s\S]*\n\n|^id: /m.test(text)) break;
  }
  stop.abort();
  return { refused: text.includes('"FORBIDDEN"'), text };
}

test("the table of rights has a line for every procedure, and none for what is not there", () => {
  expect([...rights.keys()].sort()).toEqual(procedures.map(({ path }) => path).sort());
});

test.each(procedures)("$path is for whom the table says", async ({ path, type }) => {
  for (const role of roles) {
    const right = rights.get(path)?.[role];
    const { refused, text } = await ask(path, type, role, null);
    expect.soft([path, role, refused]).toEqual([path, role, right === "no"]);
    if (refused) expect(text).toContain(role === "locked" ? "door.locked" : "door.forbidden");
  }
});

test("what every station may, one station may too", async () => {
  for (const { path, type } of procedures.filter((each) => rights.get(each.path)?.station === "yes")) {
    expect.soft([path, (await ask(path, type, "station", "core")).refused]).toEqual([path, false]);
  }
});

const places: readonly DevicePlace[] = [
  { role: "check-in" },
  { role: "station", test: "core" },
  { role: "second-judge", test: "core" },
  { role: "board" },
];

test.each(procedures)(
  "a device may $path where the table says so, and its role may",
  async ({ path, type }) => {
    for (const place of places) {
      const { role, station } = callerAt(place);
      const device = { id: crypto.randomUUID(), name: "Red tablet", place };
      const right = rights.get(path);
      const { refused, text } = await ask(path, type, role, station, device);
      // What a station may with its own alone is refused for an input that names no station.
      const isOwn = right?.[role] === "own" && right.device === "yes";
      const isAllowed = right?.device === "yes" && right[role] !== "no" && !isOwn;
      if (!isOwn) expect.soft([path, role, refused]).toEqual([path, role, !isAllowed]);
      if (isOwn && refused) expect(text).toContain("door.otherStation");
      else if (refused) expect(text).toContain("door.forbidden");
    }
  },
);

test("no device has the organiser's role, whatever its place says", () => {
  expect(places.map((place) => callerAt(place).role)).not.toContain("organiser");
  expect(devicePlaceSchema.safeParse({ role: "organiser" }).success).toBe(false);
  expect(devicePlaceSchema.safeParse({ role: "station" }).success).toBe(false);
  expect(devicePlaceSchema.safeParse({ role: "second-judge" }).success).toBe(false);
});
