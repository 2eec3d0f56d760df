import { useTranslation } from "react-i18next";
import { localeOf } from "../../../electron/domain/languages.ts";
import type { Hall } from "../../../electron/domain/plan/hall.ts";
import type { Change } from "../../../electron/domain/plan/told.ts";
import { useTestWords } from "../../app/testWords.ts";

/** The ordinals that have words: a second place, a third, a fourth. */
const ordinals = ["second", "third", "fourth"] as const;

/** Returns the sayer of one or two changes: "a second place at the quadrant jump and one more judge". */
export function useChangeWords(hall: Pick<Hall, "stations">): (changes: readonly Change[]) => string {
  const { i18n } = useTranslation();
  const changeWord = useChangeWord(hall);
  const list = new Intl.ListFormat(localeOf(i18n.language), { type: "conjunction" });
  return (changes) => list.format(changes.map(changeWord));
}

function useChangeWord(hall: Pick<Hall, "stations">): (change: Change) => string {
  const { t } = useTranslation("plan");
  const testWord = useTestWords();
  return (change) => {
    switch (change.kind) {
      case "place": {
        const { places = 1 } = stationOf(hall, change.test) ?? {};
        return t(`change.place.${ordinals[places - 1] ?? "more"}`, {
          where: testWord(change.test, "inText"),
        });
      }
      case "lane": {
        const { lanes = 1 } = stationOf(hall, change.test) ?? {};
        return t("change.lane", { where: testWord(change.test, "inText"), before: lanes, lanes: lanes + 1 });
      }
      case "rest":
        return t("change.rest", { count: Math.round(change.lessSeconds / 60) });
      default:
        return t(`change.${change.kind}`);
    }
  };
}

function stationOf({ stations }: Pick<Hall, "stations">, test: string) {
  return stations.find((station) => station.test === test);
}

/** Begins a sentence with a text, in capitals as the language has them. */
export function asSentence(text: string, language: string): string {
  const [first = "", ...rest] = text;
  return first.toLocaleUpperCase(localeOf(language)) + rest.join("");
}
