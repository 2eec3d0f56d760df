import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { faultOf } from "../../../electron/shell/log/log-fault.ts";
import { type LogEvent, lineOf } from "../../../electron/shell/log/log-line.ts";
import { logPlaceOf } from "../../../electron/shell/log/log-place.ts";

const at = new Date("2031-05-04T08:00:00.000Z");

test("an event is one line of time, kind and fields; an empty field is left out", () => {
  expect(
    lineOf({ what: "fault", where: "main", error: "TypeError", code: "", call: "", at: "main.js:12:3" }, at),
  ).toBe("2031-05-04T08:00:00.000Z fault where=main error=TypeError at=main.js:12:3");
  expect(lineOf({ what: "page-gone", host: "desk", place: "/athletes/*", reason: "oom" }, at)).toBe(
    "2031-05-04T08:00:00.000Z page-gone host=desk place=/athletes/* reason=oom",
  );
});

/** One of each kind, every text of it the same. */
function eventsOf(text: string): LogEvent[] {
  return [
    {
      ...{ what: "started", version: text, electron: text, system: text, release: text, processor: text },
      packaged: true,
      sandbox: true,
    },
    { what: "store", is: text },
    { what: "fault", where: text, error: text, code: text, call: text, at: text },
    { what: "page-gone", host: "desk", place: text, reason: text },
    { what: "page-error", host: "desk", place: `/athletes/${text}`, error: text, at: text },
    { what: "process-gone", type: text, reason: text, code: 1 },
  ] as LogEvent[];
}

test("whatever text gets into an event, none of it gets into a line", () => {
  const names = fc.tuple(
    fc.constantFrom(
      "Zanzi",
      "ZANZI",
      "zanzi",
      "12 Zanzi",
      "EZANZI é",
      "zanzi.js:1:1",
      "main.js:1:1\nZanzi",
      "main.js:1:1,Zanzi",
    ),
    fc.string({ unit: "grapheme" }),
  );
  fc.assert(
    fc.property(names, ([name, rest]) => {
      for (const event of eventsOf(`${name}${rest}`)) {
        const line = lineOf(event, at);
        expect(line.toLowerCase()).not.toContain("zanzi");
        expect(line).not.toContain("\n");
      }
    }),
    { numRuns: 300 },
  );
});

test("a name can't pass for a code of the system", () => {
  const line = lineOf({ what: "fault", where: "main", error: "Error", code: "EMMA", call: "", at: "" }, at);
  expect(line).not.toContain("EMMA");
  for (const code of [
    "ENOSPC",
    "EACCES",
    "EIO",
    "SQLITE_FULL",
    "SQLITE_IOERR_FSYNC",
    "ERR_INVALID_ARG_TYPE",
  ]) {
    expect(lineOf({ what: "fault", where: "main", error: "Error", code, call: "", at: "" }, at)).toContain(
      code,
    );
  }
});

test("of an error its kind, its code and its places are told, and nothing of its message", () => {
  const error = Object.assign(
    new TypeError("Zanzi Bar has no mark\n    at Zanzi (/home/zanzi/Zanzi.js:1:1)"),
    {
      code: "ENOSPC",
      syscall: "fsync",
    },
  );
  error.stack = `${error.name}: ${error.message}
    at writeWhole (file:///home/zanzi/tapeline/out/main/main.js:120:7)
    at Object.<anonymous> (C:\\Users\\Zanzi\\tapeline\\out\\main\\main.js:9:1)
    at node:internal/process/task_queues:103:5`;
  const fault = faultOf(error);
  expect(fault).toEqual({
    error: "TypeError",
    code: "ENOSPC",
    call: "fsync",
    at: "main.js:120:7,main.js:9:1,node:internal/process/task_queues:103:5",
  });
  expect(lineOf({ what: "fault", where: "promise", ...fault }, at)).toContain(`at=${fault.at}`);
  const odd = { ...fault, at: "main.js:1:1,Zanzi.js:1:1,main.js:2:2" };
  expect(lineOf({ what: "fault", where: "main", ...odd }, at)).toContain("at=main.js:1:1,?,main.js:2:2");
  expect(faultOf("Zanzi")).toEqual({ error: "other", code: "", call: "", at: "" });
});

test("a place keeps its own words and stars out everything else", () => {
  expect(logPlaceOf("app://desk/#/athletes/3f2a?find=Zanzi")).toEqual({ host: "desk", place: "/athletes/*" });
  expect(logPlaceOf("app://desk/#/print/cards/12/zanzi/a4")).toEqual({
    host: "desk",
    place: "/print/cards/*/*/a4",
  });
  expect(logPlaceOf("app://board/")).toEqual({ host: "board", place: "/" });
  expect(logPlaceOf("https://zanzi.example/#/day")).toEqual({ host: "other", place: "" });
});

test("every word of the desk's own places may stand in the log", () => {
  const root = new URL("../../../renderer/windows/", import.meta.url);
  const routes = ["routes.tsx", "DeskApp.tsx"]
    .map((file) => readFileSync(new URL(file, root), "utf8"))
    .join("\n");
  const paths = [...routes.matchAll(/path="([^"]+)"/g)].map(([, path = ""]) =>
    path.replaceAll(/\/:\w+\??/g, "/*"),
  );
  expect(paths.length).toBeGreaterThan(10);
  for (const path of paths) expect(logPlaceOf(`app://desk/#${path}`).place).toBe(path);
});
