import { useTranslation } from "react-i18next";
import { useTestWords } from "../../../app/testWords.ts";
import { useWriteDay, useWriteTime } from "../../../words/dates.ts";
import { HeldAttempts } from "./HeldAttempts.tsx";
import { HeldHeats } from "./HeldHeats.tsx";
import { HeldMarks } from "./HeldMarks.tsx";
import css from "./HeldPage.module.css";
import type { HeldDay } from "./types.ts";

/** Shows one day: the athlete's attendance, the attempts, and the marks. */
export function HeldDayPart({ day }: { readonly day: HeldDay }) {
  const { t } = useTranslation("held");
  const writeDay = useWriteDay();
  const sentences = useSentences(day);
  return (
    <section className={css.day}>
      <h2>{t("page.dayOf", { title: day.title, date: writeDay(day.date) })}</h2>
      {sentences.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <HeldAttempts attempts={day.attempts} />
      {day.marks.length > 0 && <HeldMarks marks={day.marks} />}
      {day.heats.length > 0 && <HeldHeats heats={day.heats} />}
    </section>
  );
}

/** Says how the athlete attended and which tests they skipped, each in a sentence. */
function useSentences({ entry, left_out, calls, absences }: HeldDay): string[] {
  const { t } = useTranslation(["held", "common"]);
  const testWord = useTestWords();
  const writeTime = useWriteTime();
  const nameOf = (test: HeldDay["calls"][number]["test"]) => testWord(test, "name");
  const { state, bib, since } = entry;
  const withBib = state === "withdrawn" && bib !== null ? "withdrawnBib" : state;
  const left = left_out.map(({ test, kind, reason, decided_by, at }) =>
    t(`page.${kind}`, { test: nameOf(test), reason, by: decided_by, time: writeTime(at) }),
  );
  const called = calls.map(({ test, at }) => t("page.called", { test: nameOf(test), time: writeTime(at) }));
  const absent = absences.map(({ test, at, noted_by }) =>
    t("page.absent", { test: nameOf(test), by: noted_by, time: writeTime(at) }),
  );
  return [t(`page.state.${withBib}`, { bib, time: writeTime(since) }), ...left, ...called, ...absent];
}
