import type { ZodError, ZodSafeParseResult } from "zod";
import { type Sentence, sentence } from "../words.ts";
import { agilityTest } from "./agility/definition.ts";
import { coreTest } from "./core/definition.ts";
import type { TestDefinition } from "./definition.ts";
import { enduranceTest } from "./endurance/definition.ts";
import type { LaneState, What } from "./live.ts";
import type { Protocol } from "./protocol.ts";
import { pushUpTest } from "./push-up/definition.ts";
import { verticalTest } from "./vertical/definition.ts";

/** The tests by code, in the order in which a day holds them: the order is part of the protocol. */
const tests = Object.freeze({
  "push-up": pushUpTest,
  agility: agilityTest,
  vertical: verticalTest,
  core: coreTest,
  endurance: enduranceTest,
});

type Tests = typeof tests;
export type TestCode = keyof Tests;
/** In the order in which a day holds them. */
export const testCodes = Object.freeze(Object.keys(tests)) as readonly [TestCode, ...TestCode[]];

export type ProtocolOf<Code extends TestCode> = Tests[Code]["protocol"];
export type ParametersOf<Code extends TestCode> = ProtocolOf<Code>["defaults"];
export type AttemptOf<Code extends TestCode> = Parameters<ProtocolOf<Code>["slot"]>[0];
/** What a lane of a live heat shows. */
export type LaneOf<Code extends TestCode> = ReturnType<Tests[Code]["live"]["show"]>;

/** A test whose parameters, attempts and taps the caller does not look into: it only hands on what was parsed. */
export type AnyTest = TestDefinition<TestCode, unknown, unknown, What, unknown, LaneState>;
/** Its rules. */
export type AnyProtocol = Protocol<TestCode, unknown, unknown>;

/** The test of a code that is only known when the program runs. `tests[code]` keeps the types where it is known. */
export function definitionOf(code: TestCode): AnyTest {
  return tests[code];
}

/** The rules of each test, with its own types. */
export const protocols = ofEachTest((code) => tests[code].protocol) as {
  readonly [Code in TestCode]: ProtocolOf<Code>;
};

/** The rules of a test whose code is only known when the program runs. */
export function protocolOf(code: TestCode): AnyProtocol {
  return tests[code].protocol;
}

/** Something of every test, by its code. */
export function ofEachTest<Value>(value: (code: TestCode) => Value): Readonly<Record<TestCode, Value>> {
  const entries = testCodes.map((code) => [code, value(code)] as const);
  return Object.fromEntries(entries) as Record<TestCode, Value>;
}

/** Version of the scoring rules, stored beside every derived mark; goes up when any rule of scoring changes. */
export const rulesVersion = 1;

/** Parses what was seen; never throws. `refusalOf` makes a sentence of a failure. */
export function parseAttempt(code: TestCode, attempt: unknown): ZodSafeParseResult<unknown> {
  return protocolOf(code).attempt.safeParse(attempt);
}

/** Parses the parameters of a day; never throws. */
export function parseParameters(code: TestCode, parameters: unknown): ZodSafeParseResult<unknown> {
  return protocolOf(code).parameters.safeParse(parameters);
}

/** Parameters of a day nobody has changed anything for; frozen. */
export function defaultParameters<Code extends TestCode>(code: Code): ParametersOf<Code> {
  return tests[code].protocol.defaults;
}

/** Why a shape was refused, for people: the rule's own sentence where it has one, else the field to look at. */
export function refusalOf(error: ZodError): Sentence {
  for (const issue of error.issues) {
    if (issue.code === "custom" && isSentence(issue.params?.sentence)) return issue.params.sentence;
  }
  const field = error.issues[0]?.path.join(".") ?? "";
  return field === "" ? sentence("marks.unreadable") : sentence("marks.unreadableField", { field });
}

function isSentence(value: unknown): value is Sentence {
  return typeof value === "object" && value !== null && "key" in value && typeof value.key === "string";
}
