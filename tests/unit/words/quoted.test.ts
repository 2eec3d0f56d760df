import { expect, test } from "vitest";
import { filesOf, textsOf } from "../word-files.ts";

/** A sentence that sends somebody to a key on another screen has to name it as that screen does. */
const quotes = [
  ["live:gather.skipAsk", ["live:gather.sendBack", "checkIn:here.change", "checkIn:decision.some"]],
  ["station:entry.skipAsk", ["checkIn:here.change", "checkIn:decision.some"]],
  ["join:arrived.next.common", ["live:gather.callNext"]],
  ["join:arrived.next.own", ["live:gather.callNext"]],
  ["join:arrived.paper", ["live:mode.paper"]],
  ["join:change.other", ["devices:title"]],
] as const;

test.each(["en", "es"].flatMap((language) => quotes.map(([key, keys]) => [language, key, keys] as const)))(
  "in %s %s names the keys of other screens in their own words",
  (language, key, keys) => {
    const texts = textsOf(filesOf(language));
    const said = texts.get(key) ?? "";
    const [open, close] = language === "es" ? ["«", "»"] : ["“", "”"];
    for (const each of keys) expect(said).toContain(`${open}${texts.get(each)}${close}`);
  },
);
