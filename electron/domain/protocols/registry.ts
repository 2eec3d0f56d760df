import type { ZodError, ZodSafeParseResult } from "zod";
import { type Sentence, sentence } from "../words.ts";
import { agility } from "./agility.ts";
import { core } from "./core.ts";
import { endurance } from "./endurance.ts";
import type { Protocol, TestCode } from "./protocol.ts";
import { pushUp } from "./push-up.ts";
import { vertical } from "./vertical.ts";

/** Version of the scoring rules, stored beside every derived mark; goes up when any rule of scoring changes. */
export const rulesVersion = 1;

/** The five tests by code, each with its own types. */
export const protocols = Object.freeze({ "push-up": pushUp, agility, vertical, core, endurance });

export type ProtocolOf<Code extends TestCode> = (typeof protocols)[Code];
export type ParametersOf<Code extends TestCode> = ProtocolOf<Code>["defaults"];
export type AttemptOf<Code extends TestCode> = Parameters<ProtocolOf<Code>["slot"]>[0];

/** A test whose parameters and attempts the caller does not look into: it only hands on what was parsed. */
export type AnyProtocol = Protocol<TestCode, unknown, unknown>;

/** The test of a code that is only known when the program runs. `protocols[code]` keeps the types where it is known. */
export function protocolOf(code: TestCode): AnyProtocol {
  return protocols[code];
}

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
  return protocols[code].defaults;
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
