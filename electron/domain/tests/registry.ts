import type { z } from "zod/mini";
import { type Sentence, sentence } from "../words.ts";
import { agilityTest } from "./agility/definition.ts";
import { coreTest } from "./core/definition.ts";
import type { TestDefinition } from "./definition.ts";
import { enduranceTest } from "./endurance/definition.ts";
import type { LaneState, What } from "./live.ts";
import type { Protocol } from "./protocol.ts";
import { pushUpTest } from "./push-up/definition.ts";
import { verticalTest } from "./vertical/definition.ts";

/** The tests by code, in the order of a day; the order is part of the protocol. */
const tests = Object.freeze({
  "push-up": pushUpTest,
  agility: agilityTest,
  vertical: verticalTest,
  core: coreTest,
  endurance: enduranceTest,
});

type Tests = typeof tests;
export type TestCode = keyof Tests;
/** The test codes in the order of a day. */
export const testCodes = Object.freeze(Object.keys(tests)) as readonly [TestCode, ...TestCode[]];

export type ProtocolOf<Code extends TestCode> = Tests[Code]["protocol"];
export type ParametersOf<Code extends TestCode> = ProtocolOf<Code>["defaults"];
export type AttemptOf<Code extends TestCode> = Parameters<ProtocolOf<Code>["slot"]>[0];
/** The display state of a live heat's lane. */
export type LaneOf<Code extends TestCode> = ReturnType<Tests[Code]["live"]["show"]>;

/** A test whose parameters, attempts and taps the caller only passes on, without looking into them. */
export type AnyTest = TestDefinition<TestCode, unknown, unknown, What, unknown, LaneState>;
/** The rules of such a test. */
export type AnyProtocol = Protocol<TestCode, unknown, unknown>;

/** Returns the test of a code known only at run time. `tests[code]` keeps the types where it is known. */
export function definitionOf(code: TestCode): AnyTest {
  return tests[code];
}

/** The rules of each test, with its own types. */
export const protocols = ofEachTest((code) => tests[code].protocol) as {
  readonly [Code in TestCode]: ProtocolOf<Code>;
};

/** Returns the rules of a test whose code is known only at run time. */
export function protocolOf(code: TestCode): AnyProtocol {
  return tests[code].protocol;
}

/** Maps every test code to a value. */
export function ofEachTest<Value>(value: (code: TestCode) => Value): Readonly<Record<TestCode, Value>> {
  const entries = testCodes.map((code) => [code, value(code)] as const);
  return Object.fromEntries(entries) as Record<TestCode, Value>;
}

/** Version of the scoring rules, stored beside every derived mark; goes up when any rule of scoring changes. */
export const rulesVersion = 3;

/** Parses an attempt; never throws. `refusalOf` turns a failure into a sentence. */
export function parseAttempt(code: TestCode, attempt: unknown): z.core.util.SafeParseResult<unknown> {
  return protocolOf(code).attempt.safeParse(attempt);
}

/** Parses the parameters of a day; never throws. */
export function parseParameters(code: TestCode, parameters: unknown): z.core.util.SafeParseResult<unknown> {
  return protocolOf(code).parameters.safeParse(parameters);
}

/** Returns the default parameters of a test; frozen. */
export function defaultParameters<Code extends TestCode>(code: Code): ParametersOf<Code> {
  return tests[code].protocol.defaults;
}

/** Returns the sentence for a schema error: the rule's own where it has one, else the field to look at. */
export function refusalOf(error: z.core.$ZodError): Sentence {
  for (const issue of error.issues) {
    if (issue.code === "custom" && isSentence(issue.params?.sentence)) return issue.params.sentence;
  }
  const field = error.issues[0]?.path.join(".") ?? "";
  return field === "" ? sentence("marks.unreadable") : sentence("marks.unreadableField", { field });
}

function isSentence(value: unknown): value is Sentence {
  return typeof value === "object" && value !== null && "key" in value && typeof value.key === "string";
}
