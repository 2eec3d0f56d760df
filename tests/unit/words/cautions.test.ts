import { expect, test } from "vitest";
import { filesOf, textsOf } from "../word-files.ts";

test.each([
  ["en", /ask the organiser who the first aider is and where\./],
  ["es", /pregunta a la organización quién da los primeros auxilios y dónde está\./],
])("the caution to call the first aider says in %s whom to ask where that is", (language, asks) => {
  expect(textsOf(filesOf(language)).get("cautions:after")).toMatch(asks);
});
