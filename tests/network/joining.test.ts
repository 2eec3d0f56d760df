import { afterEach, beforeEach, expect, test } from "vitest";
import { codeFrom, inGroups, readCode } from "../../electron/domain/devices/codes.ts";
import { codeLastsMs, mostWrong, shutMs } from "../../electron/network/joining.ts";
import { codeOf, cookieOf, joinAs, openTable, post, send, type Table } from "./table.ts";

let table: Table;
beforeEach(async () => {
  table = await openTable();
});
afterEach(async () => {
  await table.close();
  expect(table.faults).toEqual([]);
});

async function ask(
  code: string,
  name = "Red tablet",
): Promise<{ status: number; outcome: string; ask?: string }> {
  const { status, text } = await post(table, "/join/ask", { code, name });
  return { status, ...(JSON.parse(text) as { outcome: string; ask?: string }) };
}

async function hear(secret: string | undefined) {
  const answered = await post(table, "/join/wait", { ask: secret });
  return { ...(JSON.parse(answered.text) as { state: string; place?: unknown }), answered };
}

const here = (cookie: string) => post(table, "/device/here", { waiting: 0, battery: null }, { cookie });

test("a code is 40 bits in the symbols of Crockford's Base 32, and is read as people type it", () => {
  // Bit by bit by hand: 00000 00001 00010 ... 00111 is 0x00 0x44 0x32 0x14 0xC7.
  expect(codeFrom(Uint8Array.of(0x00, 0x44, 0x32, 0x14, 0xc7))).toBe("01234567");
  expect(codeFrom(Uint8Array.of(255, 255, 255, 255, 255))).toBe("ZZZZZZZZ");
  expect(readCode(" o1il-zz zz")).toBe("0111ZZZZ");
  expect(inGroups("K7MD3QXW", " ")).toBe("K7MD 3QXW");
  table.network.openJoining();
  expect(codeOf(table)).toMatch(/^[0-9A-HJKMNP-TV-Z]{8}$/);
});

test("a device asks by code, waits for the table's yes, and then has its place", async () => {
  table.network.openJoining();
  const code = inGroups(codeOf(table), "-").toLowerCase();
  const asked = await ask(code);
  expect(asked).toMatchObject({ status: 200, outcome: "asked" });
  expect((await hear(asked.ask)).state).toBe("waiting");
  const [waiting] = table.network.view().asking;
  expect(waiting?.name).toBe("Red tablet");
  table.network.answer(waiting?.id ?? "", { role: "station", test: "core" });
  const heard = await hear(asked.ask);
  expect(heard).toMatchObject({ state: "yes", place: { role: "station", test: "core" } });
  const cookie = heard.answered.headers["set-cookie"]?.[0] ?? "";
  expect(cookie).toMatch(
    /^__Host-tapeline=[\w-]{43}; Path=\/; Secure; HttpOnly; SameSite=Strict; Max-Age=86400$/,
  );
  expect(heard.answered.text).not.toContain(cookieOf(heard.answered).slice(16));
  const told = await here(cookieOf(heard.answered));
  expect(JSON.parse(told.text)).toEqual({
    ...{ name: "Red tablet", place: { role: "station", test: "core" } },
    day: expect.stringMatching(/^own [0-9a-f]{32}$/),
    asOf: expect.stringMatching(/^[0-9a-f-]{36} $/),
  });
  expect(table.network.view().devices).toMatchObject([{ name: "Red tablet", heardMs: 0 }]);
});

test("nobody joins without the table's yes, and a no is a no", async () => {
  table.network.openJoining();
  const asked = await ask(codeOf(table));
  const [waiting] = table.network.view().asking;
  table.network.answer(waiting?.id ?? "", null);
  const heard = await hear(asked.ask);
  expect(heard.state).toBe("no");
  expect(heard.answered.headers["set-cookie"]).toBeUndefined();
  expect(table.network.view().devices).toEqual([]);
});

test("an answer that was lost on the way is given again, and the token before it holds no more", async () => {
  table.network.openJoining();
  const asked = await ask(codeOf(table));
  table.network.answer(table.network.view().asking[0]?.id ?? "", { role: "board" });
  const [first, second] = [await hear(asked.ask), await hear(asked.ask)];
  expect((await here(cookieOf(first.answered))).status).toBe(401);
  expect((await here(cookieOf(second.answered))).status).toBe(200);
  expect(table.network.view().devices).toHaveLength(1);
});

test("once a device has shown its token, the secret by which it asked is worth nothing", async () => {
  table.network.openJoining();
  const asked = await ask(codeOf(table));
  table.network.answer(table.network.view().asking[0]?.id ?? "", { role: "board" });
  const cookie = cookieOf((await hear(asked.ask)).answered);
  expect((await here(cookie)).status).toBe(200);
  expect((await hear(asked.ask)).state).toBe("gone");
  expect((await here(cookie)).status).toBe(200);
});

test("joining is closed until the table opens it, and again after two minutes", async () => {
  expect(await ask("AAAA AAAA")).toMatchObject({ status: 403, outcome: "closed" });
  table.network.openJoining();
  const code = codeOf(table);
  table.clock.tick(codeLastsMs - 1);
  expect(codeOf(table)).toBe(code);
  table.clock.tick(1);
  expect(codeOf(table)).toBe("");
  expect(await ask(code)).toMatchObject({ status: 403, outcome: "closed" });
});

test("a code that was used lets nobody else ask; the next one stands there at once", async () => {
  table.network.openJoining();
  const code = codeOf(table);
  expect((await ask(code)).outcome).toBe("asked");
  expect((await ask(code, "Somebody else")).outcome).toBe("wrong");
  expect(codeOf(table)).not.toBe(code);
  expect((await ask(codeOf(table), "Blue phone")).outcome).toBe("asked");
  expect(table.network.view().asking.map(({ name }) => name)).toEqual(["Red tablet", "Blue phone"]);
});

test("five wrong codes shut the door for a minute, for the right code too, and that code is gone", async () => {
  table.network.openJoining();
  const right = codeOf(table);
  for (let tries = 1; tries < mostWrong; tries += 1) expect((await ask("ZZZZZZZZ")).outcome).toBe("wrong");
  expect(await ask("ZZZZZZZZ")).toMatchObject({ status: 429, outcome: "shut", waitMs: shutMs });
  expect((await ask(right)).outcome).toBe("shut");
  table.network.openJoining();
  expect(codeOf(table)).toBe("");
  table.clock.tick(shutMs);
  expect((await ask(right)).outcome).toBe("closed");
  table.network.openJoining();
  expect((await ask(codeOf(table))).outcome).toBe("asked");
});

test("wrong codes in a row are counted, not all of a day", async () => {
  table.network.openJoining();
  for (let round = 0; round < 3; round += 1) {
    for (let tries = 1; tries < mostWrong; tries += 1) await ask("ZZZZZZZZ");
    expect((await ask(codeOf(table), `Tablet ${round}`)).outcome).toBe("asked");
  }
});

test("a name is one line that shows something", async () => {
  table.network.openJoining();
  for (const name of ["", "   ", "two\nlines", "a\u202eb", "x".repeat(41), 7, null]) {
    const { status } = await post(table, "/join/ask", { code: codeOf(table), name });
    expect([name, status]).toEqual([name, 400]);
  }
  expect((await ask(codeOf(table), "  Leire's phone 2 ")).outcome).toBe("asked");
  expect(table.network.view().asking[0]?.name).toBe("Leire's phone 2");
});

test("no more than 64 devices join", async () => {
  const cookies = [];
  for (let count = 0; count < 64; count += 1)
    cookies.push(await joinAs(table, { role: "board" }, `Screen ${count}`));
  expect(new Set(cookies).size).toBe(64);
  table.network.openJoining();
  expect(await ask(codeOf(table))).toMatchObject({ status: 503, outcome: "full" });
  table.network.sendAllAway();
  expect(table.network.view().devices).toEqual([]);
  for (const cookie of cookies.slice(0, 3)) expect((await here(cookie)).status).toBe(410);
});

test("a device that leaves takes its cookie with it", async () => {
  const cookie = await joinAs(table, { role: "board" });
  const left = await post(table, "/device/leave", {}, { cookie });
  expect(left.headers["set-cookie"]?.[0]).toMatch(/^__Host-tapeline=; .*Max-Age=0$/);
  expect((await here(cookie)).status).toBe(410);
  expect(table.network.view().devices).toEqual([]);
});

test("a device that has joined gets the program's page at the same address, any other the page to join", async () => {
  const cookie = await joinAs(table, { role: "check-in" });
  expect((await send(table, "/", { cookie })).text).toContain("the desk");
  expect((await send(table, "/")).text).toContain("join");
});
