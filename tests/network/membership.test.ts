import { generateKeyPairSync } from "node:crypto";
import { existsSync, mkdtempSync, readFileSync, rmSync, statSync } from "node:fs";
import { createServer, type Server } from "node:https";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import type { DevicePlace } from "../../electron/domain/devices/place.ts";
import { membershipFiles, type Sealer } from "../../electron/host/membership-files.ts";
import { identityFor } from "../../electron/network/identity.ts";
import { createMembership, type Membership } from "../../electron/network/membership.ts";
import type { MembershipKeep } from "../../electron/network/membership-kept.ts";
import { connectionOf } from "../store/connection.ts";
import { address, codeOf, openTable, post, send, type Table } from "./table.ts";

/** A program as a device of a table, over real sockets: what its pages ask, and what goes over the wire. */

let table: Table;
let keep: MembershipKeep & { text: string | null };
/** Whether it had left, at each change. */
let lefts: boolean[];
beforeEach(async () => {
  table = await openTable();
  keep = keepInMemory();
  lefts = [];
});
afterEach(async () => {
  await table.close();
  expect(table.faults).toEqual([]);
});

function keepInMemory(): MembershipKeep & { text: string | null } {
  return {
    text: null,
    read() {
      return this.text;
    },
    write(text) {
      this.text = text;
    },
  };
}

function program(may = true): Membership {
  return createMembership({
    keep,
    mayJoin: () => may,
    language: () => "en",
    changed: (left) => void lefts.push(left),
  });
}

function request(path: string, body?: object, headers: Record<string, string> = {}): Request {
  const method = body === undefined ? "GET" : "POST";
  return new Request(`app://device${path}`, {
    method,
    headers: { "content-type": "application/json", ...headers },
    ...(body !== undefined && { body: JSON.stringify(body) }),
  });
}

async function desk(membership: Membership, path: string, body: object) {
  const answer = await membership.answerDesk(path, request(path, body));
  return (await answer?.json()) as { outcome?: string; state?: string; ask?: string };
}

/** The status and words of an answer; 0 where the network failed, as a page sees it. */
async function device(membership: Membership, path: string, body?: object) {
  const answer = await membership.answerDevice(path.split("?")[0] ?? "", request(path, body));
  const text = (await answer?.text()) ?? "";
  return { status: answer?.status, json: text === "" ? null : (JSON.parse(text) as unknown) };
}

function typed(change: object = {}) {
  const shown = table.network.view().on?.shortForm ?? "";
  return { address: `${address}:${table.port}`, code: codeOf(table), key: shown, name: "Laptop", ...change };
}

/** Joins as people do; the table says yes. */
async function joinAt(membership: Membership, place: DevicePlace): Promise<string> {
  if (table.network.view().code === null) table.network.openJoining();
  const asked = await desk(membership, "/join/ask", typed());
  expect(asked.outcome).toBe("asked");
  const [waiting] = table.network.view().asking;
  table.network.answer(waiting?.id ?? "", place);
  expect(await desk(membership, "/join/wait", { ask: asked.ask })).toEqual({ state: "yes" });
  return asked.ask ?? "";
}

const here = { waiting: 0, battery: null };
const core = { role: "station", test: "core" } as const;
const tokenIn = () => (JSON.parse(keep.text ?? "{}") as { token: string }).token;

/** A server with a key of its own, that notes what is sent to it. */
async function openStranger(port: number): Promise<{ server: Server; heard: string[] }> {
  const { privateKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const { key, certificate: cert } = await identityFor(privateKey, [address], new Date());
  const heard: string[] = [];
  const server = createServer({ key, cert, minVersion: "TLSv1.3" }, (got, response) => {
    heard.push(got.url ?? "");
    response.end("{}");
  });
  server.on("secureConnection", (socket) => {
    socket.on("error", () => undefined);
    socket.on("data", (bytes) => heard.push(String(bytes)));
  });
  server.on("tlsClientError", () => undefined);
  await new Promise<void>((resolve) => server.listen(port, address, resolve));
  return { server, heard };
}

const closed = (server: Server) =>
  new Promise((resolve) => {
    server.closeAllConnections();
    server.close(resolve);
  });

test("a program joins by address, code and key, and asks the table's door as its place", async () => {
  const membership = program();
  await joinAt(membership, core);
  expect(lefts).toEqual([false]);
  expect(membership.state()).toEqual({ is: "joined", address, name: "Laptop", place: core });
  expect(await device(membership, "/device/here", here)).toMatchObject({
    status: 200,
    json: {
      ...{ name: "Laptop", place: core, day: expect.stringMatching(/^own [0-9a-f]{32}$/) },
      asOf: expect.any(String),
    },
  });
  expect(table.network.view().devices).toMatchObject([{ name: "Laptop", word: here }]);
  const standing = await device(membership, "/trpc/lock.standing");
  expect(standing).toMatchObject({ status: 200, json: { result: { data: { post: core } } } });
  expect((await device(membership, "/trpc/lock.unlock", { pin: "1" })).status).toBe(403);
  expect((await device(membership, "/trpc/station.callNext", { test: "agility" })).status).toBe(403);
  expect(await membership.answerDevice("/join/ask", request("/join/ask", {}))).toBeNull();
});

test("what can't be an address, a code or a key is said before anything is connected", async () => {
  const membership = program();
  table.network.openJoining();
  for (const [change, outcome] of [
    [{ address: "table.example:8443" }, "badAddress"],
    [{ address: "http://127.0.0.1:8443" }, "badAddress"],
    [{ code: "ABC" }, "badCode"],
    [{ key: "0123 4567" }, "badKey"],
    [{ name: "" }, "unreadable"],
  ] as const) {
    expect(await desk(membership, "/join/ask", typed(change)), JSON.stringify(change)).toEqual({ outcome });
  }
  expect(await desk(program(false), "/join/ask", typed())).toMatchObject({ outcome: "notHere" });
  expect(table.network.connections()).toBe(0);
});

test("nothing is sent to whoever has another key: not the code, and later not the token", async () => {
  table.network.openJoining();
  const membership = program();
  const wrong = typed({ key: "0000 1111 2222 3333 4444" });
  expect(await desk(membership, "/join/ask", wrong)).toEqual({ outcome: "otherKey" });
  expect(table.network.view().asking).toEqual([]);
  await joinAt(membership, core);

  await table.network.stop();
  const { server, heard } = await openStranger(table.port);
  expect((await device(membership, "/device/here", here)).status).toBe(0);
  expect((await device(membership, "/trpc/lock.standing")).status).toBe(0);
  expect(membership.metOtherKey()).toBe(true);
  expect(heard).toEqual([]);
  // Not for want of hearing: a client that looks at no key is heard.
  await post({ port: table.port, origin: table.origin }, "/device/here", here).catch(() => undefined);
  expect(heard.join(" ")).toContain("/device/here");
  await closed(server);
  expect(membership.state().is).toBe("joined");
});

test("a program started again is there again, without joining, and a table away is a network that failed", async () => {
  await joinAt(program(), core);
  const again = program();
  expect(again.state()).toMatchObject({ is: "joined", place: core });
  expect((await device(again, "/device/here", here)).status).toBe(200);
  await table.network.stop();
  expect((await device(again, "/device/here", here)).status).toBe(0);
  expect((await device(again, "/trpc/lock.standing")).status).toBe(0);
  expect(again.metOtherKey()).toBe(false);
  await table.network.resume();
  expect((await device(again, "/device/here", here)).status).toBe(200);
});

test("another place is kept for the next start", async () => {
  const membership = program();
  await joinAt(membership, core);
  const [listed] = table.network.view().devices;
  table.network.place(listed?.id ?? "", { role: "board" });
  expect((await device(membership, "/device/here", here)).json).toMatchObject({ place: { role: "board" } });
  expect(program().state()).toMatchObject({ place: { role: "board" } });
});

test("a code works once, and a lost yes is given again with a token that replaces the first", async () => {
  const membership = program();
  table.network.openJoining();
  const once = typed();
  const { ask } = await desk(membership, "/join/ask", once);
  expect(await desk(program(), "/join/ask", once)).toEqual({ outcome: "wrong" });
  table.network.answer(table.network.view().asking[0]?.id ?? "", core);
  await post(table, "/join/wait", { ask });
  expect(await desk(membership, "/join/wait", { ask })).toEqual({ state: "yes" });
  expect((await device(membership, "/device/here", here)).status).toBe(200);
  // It has shown its token: the answer is given to nobody any more.
  expect(JSON.parse((await post(table, "/join/wait", { ask })).text)).toEqual({ state: "gone" });
});

test("a no, and a table that answers nothing, are said", async () => {
  const membership = program();
  table.network.openJoining();
  const { ask } = await desk(membership, "/join/ask", typed());
  expect(await desk(membership, "/join/wait", { ask })).toEqual({ state: "waiting" });
  table.network.answer(table.network.view().asking[0]?.id ?? "", null);
  expect(await desk(membership, "/join/wait", { ask })).toEqual({ state: "no" });
  const before = typed();
  await table.network.stop();
  expect(await desk(membership, "/join/ask", { ...before, code: "AAAA BBBB" })).toEqual({ outcome: "away" });
  expect(keep.text).toBeNull();
});

test("a program that was sent away knows it at the next word, and keeps no token", async () => {
  const membership = program();
  await joinAt(membership, core);
  table.network.sendAllAway();
  expect((await device(membership, "/trpc/lock.standing")).status).toBe(401);
  const letGo = { status: 410, json: { why: "sentAway" } };
  expect(await device(membership, "/device/here", here)).toEqual(letGo);
  expect(membership.state()).toEqual({ is: "over", why: "sentAway" });
  expect(keep.text).toBeNull();
  // A page that is loaded after it hears the same.
  expect(await device(membership, "/device/here", here)).toEqual(letGo);
  expect(program().state()).toEqual({ is: "apart" });
  await device(membership, "/device/leave", {});
  expect(membership.state()).toEqual({ is: "apart" });
});

test("a program is told that the day was closed, and keeps no token", async () => {
  const membership = program();
  await joinAt(membership, core);
  await device(membership, "/device/here", here);
  const { day } = await table.as("organiser").day.current();
  await table.as("organiser").day.close({ dayId: day?.id ?? 0 });
  // The first word may go into the connection that the table has just ended.
  await expect
    .poll(async () => (await device(membership, "/device/here", here)).json)
    .toEqual({ why: "closed" });
  expect(membership.state()).toEqual({ is: "over", why: "closed" });
  expect(keep.text).toBeNull();
  // It has said so to the table, which listens no longer than for that.
  expect((await device(membership, "/device/heard", {})).status).toBe(200);
  const gone = () =>
    post(table, "/join/wait", { ask: "" }).then(String, ({ code }: { code: string }) => code);
  await expect.poll(gone, { timeout: 15_000 }).toBe("ECONNREFUSED");
});

test("a table from an earlier backup does not know the program, which keeps what was entered and may join again", async () => {
  const membership = program();
  await joinAt(membership, core);
  connectionOf(table.desk.store.db).exec("DELETE FROM device");
  expect((await device(membership, "/device/here", here)).status).toBe(401);
  expect(membership.state()).toEqual({ is: "over", why: "unknown" });
  await device(membership, "/device/leave", {});
  expect(lefts).toEqual([false, false]);
  await joinAt(membership, core);
  expect((await device(membership, "/device/here", here)).status).toBe(200);
});

test("leaving is heard by the table, and forgotten here also where the table is away", async () => {
  const membership = program();
  await joinAt(membership, core);
  expect((await device(membership, "/device/leave", {})).status).toBe(200);
  expect(table.network.view().devices).toEqual([]);
  expect(keep.text).toBeNull();
  expect(lefts).toEqual([false, true]);
  expect((await device(membership, "/device/here", here)).status).toBe(401);

  await joinAt(membership, core);
  await table.network.stop();
  await device(membership, "/device/leave", {});
  expect(membership.state()).toEqual({ is: "apart" });
});

test("changes come through as they happen, and a stream that is cut fails for the page", async () => {
  const membership = program();
  await joinAt(membership, core);
  const answer = await membership.answerDevice(
    "/trpc/changes",
    request("/trpc/changes", undefined, { accept: "text/event-stream" }),
  );
  expect(answer?.headers.get("content-type")).toBe("text/event-stream");
  const reader = answer?.body?.getReader();
  const came: string[] = [];
  async function until(word: string): Promise<void> {
    while (!came.join("").includes(word)) {
      const part = await reader?.read();
      if (part === undefined || part.done) throw new Error("The stream ended.");
      came.push(Buffer.from(part.value).toString());
    }
  }
  await until("connected");
  await table.as("organiser").board.hide({ hidden: true });
  await until('["board"]');
  const cut = expect(until("never")).rejects.toThrow();
  await table.network.stop();
  await cut;
});

test("a page that goes ends its stream at the table", async () => {
  const membership = program();
  await joinAt(membership, core);
  const gone = new AbortController();
  const answer = await membership.answerDevice(
    "/trpc/changes",
    new Request("app://device/trpc/changes", { headers: { accept: "text/event-stream" } }),
  );
  const reader = answer?.body?.getReader();
  await reader?.read();
  const during = table.network.connections();
  await reader?.cancel();
  gone.abort();
  await expect.poll(() => table.network.connections()).toBeLessThan(during);
});

test("the token is good in its header alone, whole, and not beside a cookie", async () => {
  const membership = program();
  await joinAt(membership, core);
  const token = tokenIn();
  const cookie = `__Host-tapeline=${token}`;
  const statusOf = async (headers: Record<string, string>) =>
    (await send(table, "/trpc/lock.standing", { headers })).status;
  expect(await statusOf({ authorization: `Bearer ${token}` })).toBe(200);
  expect(await statusOf({ cookie })).toBe(200);
  expect(await statusOf({ authorization: `Bearer ${token}`, cookie })).toBe(401);
  expect(await statusOf({ authorization: `Bearer ${token.slice(1)}` })).toBe(401);
  expect(await statusOf({ authorization: `Bearer ${"A".repeat(43)}` })).toBe(401);
  expect(await statusOf({ authorization: `Basic ${token}` })).toBe(401);
  expect(await statusOf({ authorization: `Bearer ${token}`, origin: "https://example.org" })).toBe(403);
});

test("the file is this user's alone, sealed where the system can, and gone when there is nothing to keep", () => {
  const folder = mkdtempSync(join(tmpdir(), "tapeline-joined-"));
  const file = join(folder, "joined-table");
  const turned: Sealer = {
    seal: (text) => Buffer.from(text).map((byte) => byte ^ 255),
    open: (sealed) => Buffer.from(sealed.map((byte) => byte ^ 255)).toString(),
  };
  const files = membershipFiles(folder, turned);
  expect(files.read()).toBeNull();
  files.write('{"token":"secret"}');
  expect(readFileSync(file, "utf8")).toMatch(/^sealed [A-Za-z0-9+/=]+$/);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(files.read()).toBe('{"token":"secret"}');
  const bare = membershipFiles(folder, { ...turned, seal: () => null });
  bare.write('{"token":"plain"}');
  expect(readFileSync(file, "utf8")).toBe('{"token":"plain"}');
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(bare.read()).toBe('{"token":"plain"}');
  files.write(null);
  expect(existsSync(file)).toBe(false);
  rmSync(folder, { recursive: true });
});
