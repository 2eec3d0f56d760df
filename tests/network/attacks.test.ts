import { randomBytes } from "node:crypto";
import { once } from "node:events";
import { Agent } from "node:https";
import { connect as connectPlain, type Socket } from "node:net";
import { setTimeout as rest } from "node:timers/promises";
import { connect } from "node:tls";
import { afterEach, beforeEach, expect, test } from "vitest";
import { proceduresOfDevices } from "../../electron/api/door/device-rights.ts";
import { appRouter } from "../../electron/api/router.ts";
import { identityFor, keyOf } from "../../electron/network/identity.ts";
import { makeServer } from "../../electron/network/server.ts";
import { connectionOf } from "../store/connection.ts";
import { networkInMemory } from "./in-memory.ts";
import { address, dial, freePort, joinAs, openTable, post, send, type Table } from "./table.ts";

/** The attacks that the network's record lists (electron/network/NETWORK.md), each over real sockets. */

let table: Table;
beforeEach(async () => {
  table = await openTable({
    bounds: { patience: { handshake: 600, headers: 600, request: 1_200, idle: 600 } },
  });
});
afterEach(async () => {
  await table.close();
  // No attack is a fault of the program.
  expect(table.faults).toEqual([]);
});

const asking = "/trpc/board.view";

test("guessing: of a thousand codes five are looked at, then none for a minute", async () => {
  table.network.openJoining();
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const tally: Record<string, number> = {};
  for (let tries = 0; tries < 1_000; tries += 1) {
    const guess = { code: `ZZZZ${String(tries).padStart(4, "0")}`, name: "x" };
    const { text } = await post(table, "/join/ask", guess, { agent });
    const { outcome } = JSON.parse(text) as { outcome: string };
    tally[outcome] = (tally[outcome] ?? 0) + 1;
  }
  agent.destroy();
  expect(tally).toEqual({ wrong: 4, shut: 996 });
  expect(table.network.view().asking).toEqual([]);
});

test("guessing a token: nothing but 401, and the same one for none at all", async () => {
  await joinAs(table, { role: "board" });
  for (const cookie of [
    "",
    ...Array.from({ length: 50 }, () => `__Host-tapeline=${randomBytes(32).toString("base64url")}`),
    "__Host-tapeline=; DROP TABLE device",
    `__Host-tapeline=${"A".repeat(4_000)}`,
  ]) {
    expect(await send(table, asking, { cookie })).toMatchObject({ status: 401, text: "" });
  }
});

test("a stolen hash of a token opens nothing", async () => {
  await joinAs(table, { role: "board" });
  const rows = connectionOf(table.desk.store.db).prepare("SELECT token_hash AS hash FROM device").all();
  const { hash } = rows[0] as { hash: string };
  expect(hash).toMatch(/^[0-9a-f]{64}$/);
  for (const token of [hash, Buffer.from(hash, "hex").toString("base64url")]) {
    expect((await send(table, asking, { cookie: `__Host-tapeline=${token}` })).status).toBe(401);
  }
});

test("a cookie used from a page of another origin, or of a name that leads here, is refused", async () => {
  const cookie = await joinAs(table, { role: "station", test: "core" });
  const body = JSON.stringify({ hidden: true });
  const path = "/trpc/board.hide";
  const from = (headers: Record<string, string>) =>
    send(table, path, { method: "POST", body, cookie, headers });
  for (const origin of [
    "https://evil.example",
    "null",
    `http://${address}:${table.port}`,
    `https://${address}`,
    `https://${address}:${table.port}.evil.example`,
  ]) {
    expect([origin, (await from({ origin })).status]).toEqual([origin, 403]);
  }
  for (const site of ["cross-site", "same-site", "none", "anything"]) {
    expect([site, (await from({ "sec-fetch-site": site })).status]).toEqual([site, 403]);
  }
  expect(table.desk.boardHidden).toBe(false);
  expect((await from({ "sec-fetch-site": "same-origin" })).status).toBe(200);
  expect(table.desk.boardHidden).toBe(true);
});

test("what writes without an Origin is refused, and so is reading from another site", async () => {
  const cookie = await joinAs(table, { role: "station", test: "core" });
  const bare = await dial(table);
  const body = "{}";
  bare.socket.write(
    `POST /device/leave HTTP/1.1\r\nHost: ${address}:${table.port}\r\nCookie: ${cookie}\r\n` +
      `Content-Type: application/json\r\nContent-Length: ${body.length}\r\nConnection: close\r\n\r\n${body}`,
  );
  expect(await bare.ended).toMatch(/^HTTP\/1\.1 403 /);
  for (const mode of ["cors", "no-cors", "navigate"]) {
    const headers = { "sec-fetch-site": "cross-site", "sec-fetch-mode": mode, "sec-fetch-dest": "document" };
    expect([mode, (await send(table, asking, { cookie, headers })).status]).toEqual([mode, 403]);
  }
  expect(table.network.view().devices).toHaveLength(1);
});

test("rebinding: a name that was led to this address is not one that we serve", async () => {
  const cookie = await joinAs(table, { role: "board" });
  for (const host of [
    "evil.example",
    `evil.example:${table.port}`,
    "localhost",
    address,
    `127.0.0.2:${table.port}`,
  ]) {
    for (const path of ["/", asking]) {
      expect([host, (await send(table, path, { cookie, headers: { host } })).status]).toEqual([host, 421]);
    }
  }
});

test("a form of another site can't be read as JSON, whatever it calls itself", async () => {
  const cookie = await joinAs(table, { role: "station", test: "core" });
  for (const type of [
    "application/x-www-form-urlencoded",
    "text/plain",
    "multipart/form-data; boundary=x",
    "text/json",
  ]) {
    const sent = { body: '{"hidden":true}', cookie, headers: { "content-type": type } };
    expect([type, (await send(table, "/trpc/board.hide", sent)).status]).toEqual([type, 415]);
    // Beside the door nothing else asks what kind of body it is.
    expect([type, (await send(table, "/device/leave", { ...sent, body: "{}" })).status]).toEqual([type, 415]);
  }
  expect(table.desk.boardHidden).toBe(false);
});

test("no answer lets another site read it, be framed or opened from it", async () => {
  const cookie = await joinAs(table, { role: "board" });
  const answers = [
    await send(table, "/"),
    await send(table, "/nothing"),
    await send(table, asking, { cookie }),
    await send(table, asking, { headers: { host: "evil.example" } }),
    await send(table, asking, { method: "OPTIONS", headers: { origin: "https://evil.example" } }),
  ];
  for (const { headers } of answers) {
    expect(Object.keys(headers).filter((name) => name.startsWith("access-control"))).toEqual([]);
    expect(headers["content-security-policy"]).toContain("default-src 'none'");
    expect(headers["content-security-policy"]).toContain("frame-ancestors 'none'");
    expect(headers["cross-origin-resource-policy"]).toBe("same-origin");
    expect(headers["x-content-type-options"]).toBe("nosniff");
    expect(headers["cache-control"]).toBe("no-store");
    expect(headers.server).toBeUndefined();
  }
});

test("smuggling: a request whose end can be read in two ways is refused, and its connection ends", async () => {
  const host = `Host: ${address}:${table.port}`;
  const inner = `GET /assets/boot-1a2b3c4d.js HTTP/1.1\r\n${host}\r\n\r\n`;
  const own = `${host}\r\nOrigin: ${table.origin}\r\nContent-Type: application/json`;
  const post = "POST /join/wait HTTP/1.1";
  for (const [name, text] of Object.entries({
    both: `${post}\r\n${own}\r\nContent-Length: 4\r\nTransfer-Encoding: chunked\r\n\r\n0\r\n\r\n${inner}`,
    twoLengths: `${post}\r\n${own}\r\nContent-Length: 0\r\nContent-Length: ${inner.length}\r\n\r\n${inner}`,
    spaced: `${post}\r\n${own}\r\nTransfer-Encoding : chunked\r\n\r\n0\r\n\r\n${inner}`,
    unknown: `${post}\r\n${own}\r\nTransfer-Encoding: xchunked\r\nContent-Length: 0\r\n\r\n${inner}`,
    lineFeeds: `${post}\n${own.replaceAll("\r", "")}\nTransfer-Encoding: chunked\nContent-Length: 0\n\n${inner}`,
    folded: `${post}\r\n${own}\r\nTransfer-Encoding:\r\n chunked\r\nContent-Length: 0\r\n\r\n${inner}`,
    getWithBody: `GET / HTTP/1.1\r\n${host}\r\nContent-Length: ${inner.length}\r\n\r\n${inner}`,
    twoHosts: `GET / HTTP/1.1\r\n${host}\r\nHost: evil.example\r\n\r\n`,
    oldVersion: `GET / HTTP/1.0\r\n${host}\r\nContent-Length: ${inner.length}\r\n\r\n${inner}`,
    wholeAddress: `GET https://evil.example/ HTTP/1.1\r\n${host}\r\n\r\n`,
    tunnel: `CONNECT evil.example:443 HTTP/1.1\r\n${host}\r\n\r\n${inner}`,
    upgrade: `GET / HTTP/1.1\r\n${host}\r\nConnection: Upgrade\r\nUpgrade: h2c\r\n\r\n${inner}`,
    expects: `${post}\r\n${own}\r\nExpect: 100-continue\r\nContent-Length: 2\r\n\r\n{}`,
  })) {
    const raw = await dial(table);
    raw.socket.write(text);
    const came = await raw.ended;
    const statuses = [...came.matchAll(/^HTTP\/1\.1 (\d+)/gm)].map(([, status]) => status);
    expect([name, statuses.includes("200")]).toEqual([name, false]);
    expect([name, statuses.length <= 1]).toEqual([name, true]);
    expect(came).not.toContain("export {}");
  }
});

test("slow headers are given up, however much time a whole request has", async () => {
  const patient = await openTable({
    bounds: { patience: { handshake: 600, headers: 600, request: 3_600_000, idle: 600 } },
  });
  const slow = await dial(patient);
  // One header that never ends: a new one each time would be given up for their number.
  slow.socket.write(`GET / HTTP/1.1\r\nHost: ${address}:${patient.port}\r\nx-a: `);
  const drip = setInterval(() => slow.socket.write("b"), 50);
  const given = await Promise.race([slow.ended.then(() => "up"), rest(10_000, "time")]);
  clearInterval(drip);
  slow.socket.destroy();
  expect(given).toBe("up");
  await patient.close();
});

test("a slow body and a silent connection are given up", async () => {
  const [silent, body] = [await dial(table), await dial(table)];
  body.socket.write(
    `POST /join/ask HTTP/1.1\r\nHost: ${address}:${table.port}\r\nOrigin: ${table.origin}\r\n` +
      "Content-Type: application/json\r\nContent-Length: 1000\r\n\r\n{",
  );
  await Promise.all([silent.ended, body.ended]);
  expect((await send(table, "/")).status).toBe(200);
});

test("a connection that never begins to speak TLS is given up", async () => {
  const socket = connectPlain({ host: address, port: table.port });
  await new Promise((resolve) =>
    socket
      .on("close", resolve)
      .on("error", () => undefined)
      .resume(),
  );
  expect((await send(table, "/")).status).toBe(200);
});

test("ten thousand connections: 64 at most stay, and a device that joined before is still served", async () => {
  const cookie = await joinAs(table, { role: "station", test: "core" });
  // Of another address than the attack, as every device of a hall.
  const device = { cookie, from: "127.0.0.2" };
  let most = 0;
  let tried = 0;
  const open = new Set<Socket>();
  async function one(): Promise<void> {
    tried += 1;
    const socket = connectPlain({ host: address, port: table.port });
    socket.on("error", () => undefined);
    open.add(socket);
    const closed = new Promise<void>((resolve) => socket.on("close", () => resolve()).resume());
    void closed.then(() => open.delete(socket));
    await new Promise<void>((resolve) => socket.once("connect", resolve).once("close", () => resolve()));
    most = Math.max(most, table.network.connections());
  }
  for (let batch = 0; batch < 100; batch += 1) await Promise.all(Array.from({ length: 100 }, one));
  expect(tried).toBe(10_000);
  expect(most).toBeLessThanOrEqual(65);
  // How many of them stand at once is the machine's speed; that more than one does shows that they are counted.
  expect(most).toBeGreaterThan(1);
  expect((await send(table, asking, device)).status).toBe(200);
  for (const socket of open) socket.destroy();
});

test("one device holds 64 connections at most, and the others are served all the same", async () => {
  const [greedy, modest] = [
    await joinAs(table, { role: "board" }, "Greedy"),
    await joinAs(table, { role: "board" }),
  ];
  const streams = [];
  const statuses: string[] = [];
  for (let count = 0; count < 70; count += 1) {
    const raw = await dial(table);
    raw.socket.write(
      `GET /trpc/changes HTTP/1.1\r\nHost: ${address}:${table.port}\r\nCookie: ${greedy}\r\nAccept: text/event-stream\r\n\r\n`,
    );
    while (!raw.came().startsWith("HTTP/1.1 ")) await new Promise((resolve) => setTimeout(resolve, 2));
    statuses.push(raw.came().slice(9, 12));
    streams.push(raw);
  }
  expect(statuses.slice(0, 64).every((status) => status === "200")).toBe(true);
  expect(statuses.slice(64).every((status) => status === "429")).toBe(true);
  expect((await send(table, asking, { cookie: modest })).status).toBe(200);
  for (const { socket } of streams) socket.destroy();
});

test("a gigabyte is not read: told lengths are refused at once, untold ones after a megabyte", async () => {
  const cookie = await joinAs(table, { role: "station", test: "core" });
  const told = await send(table, "/trpc/board.hide", {
    body: "{}",
    cookie,
    headers: { "content-length": String(2 ** 30) },
  }).catch(() => ({ status: 413 }));
  expect(told.status).toBe(413);
  for (const path of ["/trpc/board.hide", "/join/ask"]) {
    const raw = await dial(table);
    raw.socket.write(
      `POST ${path} HTTP/1.1\r\nHost: ${address}:${table.port}\r\nCookie: ${cookie}\r\nOrigin: ${table.origin}\r\n` +
        "Content-Type: application/json\r\nTransfer-Encoding: chunked\r\n\r\n",
    );
    const part = `10000\r\n${"x".repeat(65_536)}\r\n`;
    let sent = 0;
    while (!raw.socket.destroyed && sent < 2 ** 30) {
      if (!raw.socket.write(part)) {
        const waits = new AbortController();
        const { signal } = waits;
        await Promise.race([
          once(raw.socket, "drain", { signal }),
          once(raw.socket, "close", { signal }),
        ]).catch(() => undefined);
        waits.abort();
      }
      sent += 65_536;
    }
    expect([path, await raw.ended]).not.toEqual([path, expect.stringContaining(" 200 ")]);
    // What was on its way in the system's own buffers counts as sent.
    expect(sent).toBeLessThan(32 * 2 ** 20);
  }
});

test("headers without end are refused", async () => {
  const raw = await dial(table);
  raw.socket.write(`GET / HTTP/1.1\r\nHost: ${address}:${table.port}\r\nX-A: ${"a".repeat(20_000)}\r\n\r\n`);
  expect(await raw.ended).not.toMatch(/^HTTP\/1\.1 200/);
});

test("no path leads out of the list of files, however it is spelled", async () => {
  for (const path of [
    "/../package.json",
    "/..%2fpackage.json",
    "/%2e%2e/package.json",
    "/assets/../index.html",
    "/assets/./boot-1a2b3c4d.js",
    "//index.html",
    "/\\index.html",
    "/assets%5cboot-1a2b3c4d.js",
    "/%00",
    "/index.html%00.js",
    "/INDEX.HTML",
    "/assets",
    "/assets/",
    "/assets/boot-1a2b3c4d.js.map",
    "/index.html/",
    "/index.html;x",
    "/.hidden",
    "/trpc",
    "/trpc/",
    "/trpc/../index.html",
    "/trpc/day.current/x",
    "/trpc/constructor",
    "/trpc/__proto__",
    "/etc/passwd",
  ]) {
    const raw = await dial(table);
    raw.socket.write(`GET ${path} HTTP/1.1\r\nHost: ${address}:${table.port}\r\nConnection: close\r\n\r\n`);
    const [, status] = /^HTTP\/1\.1 (\d+)/.exec(await raw.ended) ?? [];
    expect([path, ["400", "401", "404"].includes(status ?? "")]).toEqual([path, true]);
  }
  expect((await send(table, "/assets/boot-1a2b3c4d.js")).text).toBe("export {};");
});

test("other methods are refused", async () => {
  for (const method of ["PUT", "DELETE", "PATCH", "OPTIONS", "HEAD", "TRACE", "PROPFIND"]) {
    expect([method, (await send(table, "/", { method })).status]).toEqual([method, 405]);
  }
});

/** Calls every procedure as a device, with nothing in it; returns what each is answered with. */
async function callAll(cookie: string): Promise<Record<string, number>> {
  const procedures = Object.entries(
    appRouter._def.procedures as unknown as Record<string, { _def: { type: string } }>,
  );
  const statuses: Record<string, number> = {};
  for (const [path, { _def }] of procedures) {
    if (_def.type === "subscription") continue;
    const answer =
      _def.type === "query"
        ? await send(table, `/trpc/${path}?input=%7B%7D`, { cookie })
        : await post(table, `/trpc/${path}`, {}, { cookie });
    statuses[path] = answer.status;
  }
  return statuses;
}

test("a device of one station may call no procedure of others, over the network as in a window", async () => {
  const cookie = await joinAs(table, { role: "station", test: "core" });
  const statuses = await callAll(cookie);
  const open = Object.entries(statuses).filter(([, status]) => status !== 403);
  expect(open.every(([path]) => proceduresOfDevices.has(path))).toBe(true);
  expect(open.every(([path]) => !path.startsWith("checkIn.") && !path.startsWith("network."))).toBe(true);
  expect(statuses["lock.unlock"]).toBe(403);
  const other = await post(table, "/trpc/station.callNext", { test: "agility" }, { cookie });
  expect(other).toMatchObject({ status: 403, text: expect.stringContaining("door.otherStation") });
  const own = await send(table, "/trpc/lock.standing", { cookie });
  expect(JSON.parse(own.text)).toMatchObject({
    result: { data: { post: { role: "station", test: "core" } } },
  });
});

test("a second judge's device may call what its screen needs, and no station's, no other's study", async () => {
  const cookie = await joinAs(table, { role: "second-judge", test: "core" });
  const statuses = await callAll(cookie);
  const open = Object.entries(statuses).flatMap(([path, status]) => (status === 403 ? [] : [path]));
  expect(open.sort()).toEqual([
    ...["board.hidden", "board.hide", "day.current", "language.current", "lock.standing"],
    ...["study.find", "study.read", "study.toRead"],
  ]);
  const organiser = table.as("organiser");
  const dayId = (await organiser.day.current()).day?.id ?? 0;
  const series = [
    { from: "marks" as const, dayId, judge: "QA" },
    { from: "judge" as const, judge: "RS" },
  ];
  const id = crypto.randomUUID();
  const plan = { id, test: "push-up", variant: "full", kind: "judges", dayId, series, aim: 20 } as const;
  await organiser.study.plan({ ...plan, by: "QA" });
  const reading = { id: crypto.randomUUID(), studyId: id, position: 2, athleteId: 1, by: "RS" };
  const seen = [{ how: "tally", reps: 20, offAtEnd: 0 }];
  const other = await post(table, "/trpc/study.read", { ...reading, seen }, { cookie });
  expect(other).toMatchObject({ status: 403, text: expect.stringContaining("door.otherStation") });
});

test("a device that was sent away is refused with its next request, and its stream is cut", async () => {
  const cookie = await joinAs(table, { role: "board" });
  const raw = await dial(table);
  raw.socket.write(
    `GET /trpc/changes HTTP/1.1\r\nHost: ${address}:${table.port}\r\nCookie: ${cookie}\r\nAccept: text/event-stream\r\n\r\n`,
  );
  while (!raw.came().includes("event: connected")) await new Promise((resolve) => setTimeout(resolve, 2));
  const [device] = table.network.view().devices;
  table.network.sendAway(device?.id ?? "");
  await raw.ended;
  expect((await send(table, asking, { cookie })).status).toBe(401);
  const told = await post(table, "/device/here", { waiting: 0, battery: null }, { cookie });
  expect(told).toMatchObject({ status: 410, text: '{"why":"sentAway"}' });
});

test("another place has its rights at once, and those of before are gone", async () => {
  const cookie = await joinAs(table, { role: "check-in" });
  expect((await send(table, "/trpc/checkIn.counts", { cookie })).status).toBe(200);
  const [device] = table.network.view().devices;
  table.network.place(device?.id ?? "", { role: "board" });
  expect((await send(table, "/trpc/checkIn.counts", { cookie })).status).toBe(403);
  expect((await send(table, asking, { cookie })).status).toBe(200);
});

test("TLS 1.2 is refused, and so is no TLS at all", async () => {
  const failed = (maxVersion: "TLSv1.2" | "TLSv1.3") =>
    new Promise<string>((resolve) => {
      const socket = connect({ host: address, port: table.port, rejectUnauthorized: false, maxVersion });
      socket.on("secureConnect", () => {
        resolve(String(socket.getProtocol()));
        socket.destroy();
      });
      socket.on("error", ({ message }) => resolve(message));
      socket.on("close", () => resolve("closed"));
    });
  expect(await failed("TLSv1.2")).not.toMatch(/^TLS/);
  expect(await failed("TLSv1.3")).toBe("TLSv1.3");
  const plain = connectPlain({ host: address, port: table.port });
  plain.write(`GET / HTTP/1.1\r\nHost: ${address}:${table.port}\r\n\r\n`);
  let came = "";
  plain.on("data", (part) => {
    came += part.toString("latin1");
  });
  await new Promise((resolve) => plain.on("close", resolve).on("error", () => undefined));
  expect(came).not.toContain("HTTP/");
});

test("a server with a certificate of another key is not taken for the table", async () => {
  const own = keyOf(networkInMemory().key);
  const stranger = keyOf(networkInMemory().key);
  const { certificate } = await identityFor(own, [address], new Date());
  const port = await freePort();
  const connections = {
    begin: () => undefined,
    belongsTo: () => true,
    end: () => undefined,
    endAll: () => undefined,
  };
  const server = makeServer({
    identity: await identityFor(stranger, [address], new Date()),
    connections: { ...connections, count: () => 0 },
    patience: { handshake: 600, headers: 600, request: 600, idle: 600 },
    answer: async (_request, response) => void response.end("stranger"),
  });
  await new Promise<void>((resolve) => server.listen(port, address, resolve));
  // As a device does that has kept the table's certificate.
  const told = await new Promise<string>((resolve) => {
    const socket = connect({ host: address, port, ca: certificate });
    socket.on("secureConnect", () => resolve("taken"));
    socket.on("error", ({ message }) => resolve(message));
  });
  expect(told).not.toBe("taken");
  server.closeAllConnections();
  await new Promise((resolve) => server.close(resolve));
});

test("faults say nothing of the inside", async () => {
  const cookie = await joinAs(table, { role: "board" });
  for (const path of [
    "/trpc/board.nothing",
    "/trpc/day.close",
    "/trpc/board.view?input=%7B",
    "/trpc/board.view?batch=1&input=x",
  ]) {
    const { text } = await send(table, path, { cookie });
    expect(text).not.toMatch(/\bat \w|node_modules|\.ts\b|sqlite|stack|\/home|\/tmp/i);
  }
});
