import { expect, test } from "vitest";
import type { Role } from "../../electron/domain/lock/roles.ts";
import { testDesk } from "./desk.ts";

const megabyte = 1024 * 1024;
const boundary = "multipart/form-data; boundary=b";

/** A body of 100 MB that counts how much of it was taken; it begins as what it claims to be. */
function endless(type: string) {
  const opening = type.toLowerCase().includes("multipart")
    ? '--b\r\ncontent-disposition: form-data; name="pin"\r\n\r\n'
    : '{"pin":"';
  const part = new TextEncoder().encode("1".repeat(64 * 1024));
  let taken = 0;
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => controller.enqueue(new TextEncoder().encode(opening)),
    pull(controller) {
      taken += part.length;
      controller.enqueue(part);
      if (taken >= 100 * megabyte) controller.close();
    },
  });
  return { body, taken: () => taken };
}

async function send(who: Role, path: string, type: string) {
  const { handle, faults } = testDesk();
  const { body, taken } = endless(type);
  const init = { method: "POST", headers: { "content-type": type }, body, duplex: "half" };
  const response = await handle(new Request(`http://desk/trpc/${path}`, init as RequestInit), who);
  const [, key = ""] = /"key":"([^"]+)"/.exec(await response.text()) ?? [];
  expect(response.status).toBeLessThan(500);
  expect(faults).toEqual([]);
  return { key, taken: taken() };
}

// PROMISES of the door: a request is at most a megabyte, whatever it calls itself.
test.each([
  "application/json",
  "Application/JSON",
  "APPLICATION/JSON; charset=utf-8",
  " application/json ;x=y",
  boundary,
  "Multipart/Form-Data; boundary=b",
  "application/x-www-form-urlencoded",
  "text/plain",
  "application/octet-stream",
])("of a body as %j no more than two megabytes are read", async (type) => {
  for (const who of ["locked", "organiser"] as const) {
    for (const path of ["lock.unlock", "lock.unlock,lock.unlock?batch=1"]) {
      const { key, taken } = await send(who, path, type);
      expect(taken).toBeLessThan(2 * megabyte);
      // Bytes belong to one procedure alone, so that two of them in one request are none at all.
      expect(key).toBe(type.includes("octet") && path.includes("batch") ? "door.unknown" : "door.badInput");
    }
  }
});

test.each(["intake.upload", "reference.bring"])(
  "of what %s is brought no more is read than it takes",
  async (path) => {
    const { key, taken } = await send("organiser", path, "application/octet-stream");
    expect(taken).toBeLessThan(21 * megabyte);
    expect(key).toMatch(/tooBig$/);
    expect((await send("organiser", path, boundary)).key).toBe("door.badInput");
    expect((await send("locked", path, "application/octet-stream")).taken).toBeLessThan(megabyte);
  },
);
