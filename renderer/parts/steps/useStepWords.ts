import { useTranslation } from "react-i18next";
import { writeMoment } from "../../words/dates.ts";
import type { Step } from "./step.ts";

type Facts = NonNullable<Step["changes"][number]["before"]>;

/** A step in words. */
interface StepWords {
  readonly what: string;
  readonly when: string;
  readonly changes: readonly string[];
  /** That it was undone, by whom and when; null while it stands. */
  readonly undone: string | null;
}

/** Returns who somebody is, in a line: name, number, league, and year of birth where it is known. */
export function useWhoIs(): (who: Facts) => string {
  const { t } = useTranslation("steps");
  return ({ name, number, league, birthYear }) =>
    [
      name,
      number === "" ? t("noNumber") : t("number", { number }),
      league,
      birthYear === null ? "" : t("born", { year: birthYear }),
    ]
      .filter((part) => part !== "")
      .join(" · ");
}

/** Returns how a step of the history is said. */
export function useStepWords(): (step: Step) => StepWords {
  const { t, i18n } = useTranslation("steps");
  const person = useWhoIs();
  const whoIs = (facts: Facts) => (facts.name === "" ? facts.league : person(facts));

  function changeOf({ before, after }: Step["changes"][number]): string {
    if (before === null || after === null) {
      const one = before ?? after;
      return one === null ? "" : t("goesInto", { who: whoIs(one) });
    }
    const [was, is] = [whoIs(before), whoIs(after)];
    return was === is ? t("stays", { who: is }) : t("becomes", { was, is });
  }

  /** Of leagues that became one only their names are told, not whoever comes first of them. */
  function changesOf({ kind, changes }: Step): string[] {
    if (kind !== "leagues-joined") return changes.map(changeOf);
    return changes.flatMap(({ before, after }) =>
      before === null || after === null ? [] : [t("becomes", { was: before.league, is: after.league })],
    );
  }

  return (step) => {
    const { kind, file, counts, at, by, undone } = step;
    const done = (counts.new ?? 0) + (counts.changed ?? 0);
    const imported = { count: Math.max(done, counts.joined ?? 0), file };
    const isImport = kind === "roster" || kind === "results" || kind === "past";
    const moment = writeMoment(at, i18n.language);
    return {
      what: isImport
        ? t(file === "" ? `imported.${kind}` : `importedFile.${kind}`, imported)
        : t(`kind.${kind}`),
      when: by === "" ? moment : t("by", { moment, by }),
      changes: changesOf(step),
      undone:
        undone === null
          ? null
          : t("undone", { by: undone.by, moment: writeMoment(undone.at, i18n.language) }),
    };
  };
}
