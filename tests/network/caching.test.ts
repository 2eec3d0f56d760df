import { afterEach, beforeEach, expect, test } from "vitest";
import { joinAs, openTable, post, send, type Table } from "./table.ts";

/** What a browser on the network may keep: the words of Cache-Control are RFC 9111's and RFC 8246's. */

let table: Table;
beforeEach(async () => {
  table = await openTable();
});
afterEach(async () => {
  await table.close();
  expect(table.faults).toEqual([]);
});

const kept = "private, max-age=31536000, immutable";

test("files named by their content are kept by that browser, and no page, no data and no refusal is", async () => {
  const cookie = await joinAs(table, { role: "board" });
  const caching = async (path: string, sent = {}) => {
    const { status, headers } = await send(table, path, sent);
    return [status, headers["cache-control"]];
  };
  expect(await caching("/assets/boot-1a2b3c4d.js")).toEqual([200, kept]);
  expect(await caching("/assets/boot-1a2b3c4d.js", { cookie })).toEqual([200, kept]);
  expect(await caching("/")).toEqual([200, "no-store"]);
  expect(await caching("/", { cookie })).toEqual([200, "no-store"]);
  expect(await caching("/join.html")).toEqual([200, "no-store"]);
  expect(await caching("/trpc/board.view", { cookie })).toEqual([200, "no-store"]);
  expect(await caching("/trpc/board.view")).toEqual([401, "no-store"]);
  expect(await caching("/assets/boot-9z9z9z9z.js")).toEqual([404, "no-store"]);
  expect(await caching("/assets/boot-1a2b3c4d.js.map")).toEqual([404, "no-store"]);
  // Not without the guard: what would be kept is refused first.
  expect(await caching("/assets/boot-1a2b3c4d.js", { headers: { host: "elsewhere.test" } })).toEqual([
    421,
    "no-store",
  ]);
  const told = await post(table, "/device/here", { waiting: 0, battery: null }, { cookie });
  expect([told.status, told.headers["cache-control"]]).toEqual([200, "no-store"]);
});
