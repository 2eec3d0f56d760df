import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { Answers } from "../../app/answers.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { writeDate, writeTime } from "../../words/dates.ts";
import css from "./Lock.module.css";

type Note = Answers["lock"]["log"][number];

/** Lists the lock's events, newest first, those while the organiser was away too. */
export function LockLog() {
  const { t, i18n } = useTranslation("lock");
  const trpc = useTRPC();
  const log = useQuery(trpc.lock.log.queryOptions());
  if (log.data === undefined || log.data.length === 0) return null;
  return (
    <Section title={t("log.title")}>
      <Stack as="ol" gap={1} className={css.log}>
        {log.data.map((note) => (
          <li key={`${note.at} ${note.what}`} data-what={note.what}>
            <time dateTime={note.at}>
              {writeDate(note.at.slice(0, 10), i18n.language)}, {writeTime(note.at, i18n.language)}
            </time>
            <Said note={note} />
          </li>
        ))}
      </Stack>
    </Section>
  );
}

function Said({ note }: { readonly note: Note }) {
  const { t } = useTranslation(["lock", "common"]);
  const testWord = useTestWords();
  const { what, to, test, why, count } = note;
  if (what === "handed-over") {
    const name = test === undefined ? t("common:place.checkIn") : testWord(test, "ability");
    return <span>{t("log.handed-over", { to: to === undefined ? "" : name })}</span>;
  }
  if (what === "locked") return <span>{t(`log.locked.${why ?? "hand"}`)}</span>;
  if (what === "wrong") return <span>{t("log.wrong", { count: count ?? 1 })}</span>;
  return <span>{t(`log.${what}`)}</span>;
}
