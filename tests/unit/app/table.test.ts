import { afterEach, expect, test, vi } from "vitest";

// Where a page is says what it is; the module looks as soon as it is loaded.
vi.hoisted(() => vi.stubGlobal("location", new URL("https://192.0.2.7:8443/")));

const { showTable } = await import("../../../renderer/app/table.ts");

afterEach(() => vi.unstubAllGlobals());

/** Shows the table that a device is there, and the table answers so; null: the connection ends before the answer's end. */
function answered(status: number, body: string | null) {
  const broken = new ReadableStream({
    start(controller) {
      controller.enqueue(new TextEncoder().encode('{"wh'));
      controller.error(new TypeError("the connection was reset"));
    },
  });
  vi.stubGlobal("fetch", async () => new Response(body ?? broken, { status }));
  return showTable({ waiting: 0, battery: null });
}

test.each([200, 410])(
  "an answer %i that breaks off on the way is none: the device asks again",
  async (status) => {
    expect(await answered(status, null)).toEqual({ state: "away" });
  },
);

test("a table that let a device go says why; one that does not know it is not out of reach", async () => {
  expect(await answered(410, '{"why":"closed"}')).toEqual({ state: "closed" });
  expect(await answered(410, '{"why":"sentAway"}')).toEqual({ state: "sentAway" });
  expect(await answered(401, "")).toEqual({ state: "unknown" });
  expect(await answered(503, "")).toEqual({ state: "away" });
});

test("a table that is there says what the device is used for", async () => {
  const told = { name: "Red tablet", place: { role: "board" }, day: "own x", asOf: "y" };
  const { asOf: _asOf, ...standing } = told;
  expect(await answered(200, JSON.stringify(told))).toEqual({ state: "here", ...standing });
});
