import { useTranslation } from "react-i18next";
import { protocolOf, type TestCode } from "../../electron/domain/tests/registry.ts";
import { agilityFace } from "./agility/face.tsx";
import { coreFace } from "./core/face.tsx";
import { enduranceFace } from "./endurance/face.tsx";
import type { TestFace, Texts } from "./face.ts";
import { pushUpFace } from "./push-up/face.tsx";
import { verticalFace } from "./vertical/face.tsx";

/** The windows' part of each test. */
const faces: { readonly [Code in TestCode]: TestFace<Code> } = {
  "push-up": pushUpFace,
  agility: agilityFace,
  vertical: verticalFace,
  core: coreFace,
  endurance: enduranceFace,
};

/** A test whose parameters and attempts the caller only passes on as parsed, without looking into them. */
export type AnyFace = TestFace<TestCode, unknown, unknown>;

/** Returns the windows' part of a test whose code is known only at run time. */
export function faceOf(test: TestCode): AnyFace {
  return faces[test] as unknown as AnyFace;
}

/** Parses the frozen parameters of a day by the test's own schema. */
export function readParameters(test: TestCode, parameters: unknown): unknown {
  return protocolOf(test).parameters.parse(parameters);
}

/** Returns a test's words, for its face: `const textsOf = useTexts(); textsOf(test)`. */
export function useTexts(): (test: TestCode) => Texts<TestCode> {
  const { i18n } = useTranslation();
  return (test) => i18n.getFixedT(null, [test, "common"]) as unknown as Texts<TestCode>;
}
