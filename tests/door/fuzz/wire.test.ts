import { afterAll, beforeAll, expect, test } from "vitest";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { dump } from "../../store/hall.ts";
import { type Answer, answerOf, ask, read } from "./ask.ts";
import { type FuzzHall, fuzzHall } from "./hall.ts";

let hall: FuzzHall;
beforeAll(async () => {
  hall = await fuzzHall();
});
afterAll(() => hall.close());

const json = { "content-type": "application/json" };

function send(path: string, init: RequestInit = {}): Promise<Response> {
  return hall.handle(new Request(`http://desk/trpc${path}`, init), "organiser");
}

function post(body: BodyInit | null, headers: Record<string, string> = json): RequestInit {
  return { method: "POST", body, headers };
}

function broken(): RequestInit {
  const body = new ReadableStream({ pull: (controller) => controller.error(new Error("gone")) });
  return { ...post(body), duplex: "half" } as RequestInit;
}

const hide = "/board.hide";
const large = JSON.stringify({ hidden: true, more: "x".repeat(2_000_000) });
const form = new FormData();
form.set("hidden", "yes");

const noDoor: readonly (readonly [what: string, path: string, init: RequestInit])[] = [
  ["a body that is no JSON", hide, post("{hidden")],
  ["an empty body", hide, post("")],
  ["no body at all", hide, { method: "POST" }],
  ["a body as plain text", hide, post("{}", { "content-type": "text/plain" })],
  ["a form", hide, post("hidden=1", { "content-type": "application/x-www-form-urlencoded" })],
  ["a form with parts", hide, { method: "POST", body: form }],
  ["bytes where JSON is meant", hide, post("{}", { "content-type": "application/octet-stream" })],
  ["JSON where bytes are meant", "/intake.upload", post('"name,league"')],
  ["a body of two megabytes", hide, post(large)],
  ["a body that breaks off", hide, broken()],
  ["an infinite number", "/day.close", post('{"dayId":1e999}')],
  ["NaN", "/day.close", post('{"dayId":NaN}')],
  ["input that is no JSON", "/board.view?input=%7Bnope", {}],
  ["input that is no text", "/board.view?input=%E0%A4%A", {}],
  ["a path that is no text", "/%E0%A4%A", {}],
  ["parameters of a connection that are no JSON", "/board.view?connectionParams=%7Bx", {}],
  ["a change by GET", "/day.open", {}],
  ["a question by POST", "/board.view", post("{}")],
  ["PUT", "/day.open", { ...post("{}"), method: "PUT" }],
  ["DELETE", "/day.open", { method: "DELETE" }],
  ["OPTIONS", "/board.view", { method: "OPTIONS" }],
  ["questions and changes in one", "/board.view,day.open?batch=1&input=%7B%7D", {}],
  ["5,000 questions in one", `/${Array(5000).fill("board.view").join(",")}?batch=1&input=%7B%7D`, {}],
];

test.each(noDoor)("%s is refused with a sentence, and changes nothing", async (_what, path, init) => {
  const before = [...dump(hall.desk.store.db)];
  const answer = await read(await send(path, init));
  expect(answer).toMatchObject({ key: "door.badInput" });
  expect(answer.wrong).toBeUndefined();
  expect(answer.status).toBeGreaterThanOrEqual(400);
  expect(answer.status).toBeLessThan(500);
  expect([...dump(hall.desk.store.db)]).toEqual(before);
  expect(hall.faults).toEqual([]);
  expect(hall.desk.boardHidden).toBe(false);
});

test.each(["", "/", "/nope", "/day.nope", "/__proto__", "/constructor", "/day.toString", "/board/view"])(
  "there is nothing at /trpc%s",
  async (path) => {
    expect(await read(await send(path))).toEqual({ status: 404, key: "door.unknown" });
  },
);

test("of several questions in one each gets its own answer", async () => {
  const response = await send("/board.hidden,nope,board.view?batch=1&input=5");
  expect(response.status).toBe(207);
  const answers = ((await response.json()) as unknown[]).map(answerOf);
  expect(answers[0]).toEqual({ result: { hidden: false } });
  expect(answers[1]).toEqual({ key: "door.unknown" });
  expect(answers.map(({ wrong }: Omit<Answer, "status">) => wrong)).toEqual([
    undefined,
    undefined,
    undefined,
  ]);
});

test("of several changes in one the good are made and the bad refused", async () => {
  const body = '{"0":{"hidden":true},"1":5,"2":{"hidden":false}}';
  const response = await send("/board.hide,board.hide,board.hide?batch=1", post(body));
  const answers = (await response.json()) as unknown[];
  expect(answers).toMatchObject([
    { result: {} },
    { error: { data: { code: "BAD_REQUEST" } } },
    { result: {} },
  ]);
  expect(hall.desk.boardHidden).toBe(false);
});

test.each([["[]"], ["-1"], ['"core"'], ["null"], ["true"]])(
  "a station's %s in place of an input is refused",
  async (body) => {
    const asked = { path: "station.void", type: "mutation", json: body, who: "station" } as const;
    const station: TestCode = "core";
    expect(await ask(hall, { ...asked, station })).toEqual({ status: 400, key: "door.badInput" });
    expect(hall.faults).toEqual([]);
  },
);

test.each([4, 1899, 2101, 2 ** 52])("undoing a check-in puts no year of birth %i back", async (birthYear) => {
  const before = {
    board: "bib",
    share: false,
    guardianConsent: false,
    asked: false,
    birthYear,
    category: null,
  };
  const input = JSON.stringify({ athleteId: 8, before });
  const asked = { path: "checkIn.undo", type: "mutation", json: input, who: "check-in" } as const;
  expect(await ask(hall, asked)).toEqual({ status: 400, key: "door.badInput" });
  expect(hall.faults).toEqual([]);
});
