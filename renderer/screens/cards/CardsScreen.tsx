import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { PaperWays } from "../../parts/controls/PaperActions.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import { Progress } from "../../parts/layout/Progress.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { writeDate } from "../../words/dates.ts";
import { forFile } from "../../words/forFile.ts";
import css from "./Cards.module.css";
import { ChooseCards } from "./ChooseCards.tsx";
import { type CardJob, cancelCardJob, runCardJob, useCardJob } from "./job.ts";
import { Preview } from "./Preview.tsx";
import { type CardPaper, cardPapers, layOut } from "./papers.ts";
import { chosenOf, nameOf, type People, type WhichCards, whichNamed } from "./which.ts";

interface CardsScreenProps {
  /** From the address; null: the default day, and everybody. */
  readonly day: string | null;
  readonly which: string | null;
}

/** Selects the cards of an athlete, a league or everybody, shows the paper, and prints or saves it. */
export function CardsScreen({ day, which: asked }: CardsScreenProps) {
  const which = whichNamed(asked ?? "all");
  const named = day === null || day === "current" ? "current" : Number(day);
  if (which === null || Number.isNaN(named)) return <Redirect to="/cards" />;
  return <Asked day={named} which={which} />;
}

function Asked({ day, which }: { readonly day: number | "current"; readonly which: WhichCards }) {
  const { t, i18n } = useTranslation("cards");
  const trpc = useTRPC();
  const people = useQuery(trpc.cards.people.queryOptions({ dayId: day === "current" ? null : day }));
  const [paper, setPaper] = useState<CardPaper>("a5");
  const { data } = people;
  const date = data?.day == null ? null : writeDate(data.day.date, i18n.language);
  return (
    <Screen
      title={t("title")}
      lead={date === null ? t("lead") : t("of", { title: data?.day?.title ?? "", date })}
      ready={people.isFetched}
      {...(data !== undefined &&
        chosenOf(data, which).length > 0 && { actions: <Ways people={data} which={which} paper={paper} /> })}
    >
      <JobPanel />
      <Answer query={people}>
        {(told) =>
          told.people.length === 0 ? (
            <NoCards people={told} />
          ) : (
            <div className={css.desk}>
              <ChooseCards people={told} day={day} which={which} />
              <div className={css.right}>
                <PaperChoice paper={paper} setPaper={setPaper} />
                <Notes people={told} which={which} paper={paper} />
                <Preview key={nameOf(which)} people={told} which={which} paper={paper} />
              </div>
            </div>
          )
        }
      </Answer>
    </Screen>
  );
}

interface WaysProps {
  readonly people: People;
  readonly which: WhichCards;
  readonly paper: CardPaper;
}

/** Both ways out; the button says how many pages come, before anything is on its way to the printer. */
function Ways({ people, which, paper }: WaysProps) {
  const { t } = useTranslation(["cards", "common"]);
  const count = layOut(chosenOf(people, which), paper).length;
  return (
    <PaperWays
      work={useWork(people, which, paper)}
      save={t("common:paper.save")}
      print={t("print.do", { count })}
      printsFirst
    />
  );
}

interface PaperChoiceProps {
  readonly paper: CardPaper;
  readonly setPaper: (paper: CardPaper) => void;
}

function PaperChoice({ paper, setPaper }: PaperChoiceProps) {
  const { t } = useTranslation("cards");
  return (
    <Choice
      label={t("paper.label")}
      options={cardPapers.map((each) => ({ value: each, label: t(`paper.${each}`) }))}
      value={paper}
      onChange={setPaper}
    />
  );
}

/** Notes what to know before a pile is printed. */
function Notes({ people, which, paper }: WaysProps) {
  const { t } = useTranslation("cards");
  const isCut = (paper === "a4-two" || paper === "letter-two") && chosenOf(people, which).length > 1;
  const notes = [
    people.day?.state === "open" ? t("open") : "",
    people.without > 0 ? t("without", { count: people.without }) : "",
    isCut ? t("cut") : "",
  ].filter((note) => note !== "");
  if (notes.length === 0) return null;
  return (
    <ul className={css.notes}>
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

function NoCards({ people }: { readonly people: People }) {
  const { t } = useTranslation("cards");
  return (
    <EmptyState title={t("none.title")} steps={[people.day === null ? t("none.day") : t("none.mark")]} />
  );
}

/** Prints or saves the selected cards. */
function useWork(people: People, which: WhichCards, paper: CardPaper) {
  const suggestedName = useFileName(people, which, paper);
  const count = chosenOf(people, which).length;
  const page = { path: `/print/cards/${people.day?.id ?? 0}/${nameOf(which)}`, paper, suggestedName };
  return {
    busy: useCardJob() !== null,
    print: () => void runCardJob("print", page, count),
    save: () => void runCardJob("save", page, count),
  };
}

/** Makes the file's name: "Cards 2026-11-14 A5.pdf", with the league's or athlete's name if it is theirs alone. */
function useFileName(people: People, which: WhichCards, paper: CardPaper): string {
  const { t } = useTranslation("cards");
  const values = { date: people.day?.date ?? "", paper: t(`file.paper.${paper}`) };
  if (which.kind === "all") return t("file.all", values);
  const [one] = chosenOf(people, which);
  const name = forFile((which.kind === "league" ? one?.league : one?.name) ?? "");
  return t(`file.${which.kind}`, { ...values, name });
}

/** Shows the number of cards laid out, of all, and the button that stops; nothing without a job. */
function JobPanel() {
  const { t } = useTranslation("cards");
  const job = useCardJob();
  if (job === null || job.progress === null) return null;
  return (
    <Panel>
      <Bar kind={job.kind} progress={job.progress} />
      <p>{t("job.meanwhile")}</p>
      <div>
        <Button onPress={cancelCardJob}>{t("job.cancel")}</Button>
      </div>
    </Panel>
  );
}

/** Draws the progress; writing the file can't be measured, so the bar waits then. */
function Bar({ kind, progress }: { kind: CardJob["kind"]; progress: NonNullable<CardJob["progress"]> }) {
  const { t } = useTranslation("cards");
  const { phase, done, total } = progress;
  const counted = phase === "pages" && total > 0;
  return <Progress label={t(`job.${kind}`)} done={counted ? done : null} total={total} words={words()} />;

  function words(): string {
    if (phase === "file") return t(`job.file.${kind}`, { count: total });
    return total === 0 ? t("job.start") : t("job.cards", { done, count: total });
  }
}
