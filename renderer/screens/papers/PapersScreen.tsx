import { useState } from "react";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import type { Paper } from "../../app/saving.ts";
import { PaperActions } from "../../parts/controls/PaperActions.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { forFile } from "../../words/forFile.ts";
import { ChoosePapers } from "./ChoosePapers.tsx";
import { OnePage } from "./PaperPages.tsx";
import css from "./Papers.module.css";
import { isNameable, type Page, pagesOf } from "./pages.ts";
import { type AllPapers, usePapers, useWhatText, useWhoText } from "./usePapers.ts";
import { chosenOf, nameOf, type Papers, type What, type Who, whats, whoNamed } from "./which.ts";

interface PapersScreenProps {
  /** As they stand in the address; null: record sheets, and everybody. */
  readonly what: string | null;
  readonly who: string | null;
}

/** Record sheets, bib numbers and badges: choose what and for whom, see the paper, print it or save it as a PDF. */
export function PapersScreen({ what, who }: PapersScreenProps) {
  const { t } = useTranslation("papers");
  const { all, noDay, people } = usePapers();
  const [size, setSize] = useState<Paper>("a4");
  const kind = whats.find((each) => each === (what ?? "records"));
  const named = who === null ? null : whoNamed(who);
  if (noDay) return <Redirect to="/" />;
  if (kind === undefined || (who !== null && named === null)) return <Redirect to="/papers" />;
  const chosen = all === null ? null : { all, kind, whom: named ?? usualWho(all.papers, kind), size };
  const pages = chosen === null ? [] : pagesOf(chosen.all.papers, kind, chosen.whom, size);
  return (
    <Screen
      title={t("title")}
      lead={t("lead")}
      ready={all !== null || people.isError}
      {...(chosen !== null &&
        pages.length > 0 && { actions: <Ways {...chosen} count={pages.length} setSize={setSize} /> })}
    >
      <Answer query={people}>{() => chosen !== null && <Desk {...chosen} pages={pages} />}</Answer>
    </Screen>
  );
}

/** Walk-ups get a bib too. */
const spareBibs = 10;

/** For whom papers are most often: everybody; bibs from 1 to a few more than there are people. */
function usualWho({ people }: Papers, kind: What): Who {
  return kind === "bibs" ? { kind: "bibs", from: 1, to: people.length + spareBibs } : { kind: "all" };
}

interface Chosen {
  readonly all: AllPapers;
  readonly kind: What;
  readonly whom: Who;
  readonly size: Paper;
}

interface WaysProps extends Chosen {
  /** How many pages it is. */
  readonly count: number;
  readonly setSize: (size: Paper) => void;
}

/** On which paper, and the two ways out; the buttons say how many pages come. */
function Ways({ all, kind, whom, size, count, setSize }: WaysProps) {
  const { t } = useTranslation("papers");
  const whatText = useWhatText();
  const whoText = useWhoText();
  const name = `${whatText(kind)} ${whoText(all.papers, whom)} ${all.day.date}`;
  return (
    <PaperActions
      screen="papers"
      path={`/print/papers/${kind}/${nameOf(whom)}`}
      paper={size}
      onPaper={setSize}
      fileName={`${forFile(name)}.pdf`}
      print={t("print.do", { count })}
      printsFirst
    />
  );
}

/** So many sheets are shown before they are printed. */
const mostShown = 3;

/** The choice at the left, the first sheets at the right. */
function Desk({ all, kind, whom, size, pages }: Chosen & { readonly pages: readonly Page[] }) {
  const { t } = useTranslation("papers");
  const who = useWhoText()(all.papers, whom);
  const { papers, ...rest } = all;
  return (
    <div className={css.desk}>
      <Stack gap={5} className={css.choice}>
        <ChoosePapers papers={papers} what={kind} who={whom} />
        <Notes papers={papers} kind={kind} whom={whom} />
      </Stack>
      <div>
        {pages.length === 0 && <p>{t(kind === "bibs" ? "none.bibs" : "none.people")}</p>}
        {pages.length > mostShown && <p>{t("more", { shown: mostShown, count: pages.length })}</p>}
        <Row gap={5} wrap className={css.sheets}>
          {pages.slice(0, mostShown).map((page, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: pages have no names, and never change places
            <div key={index} className={css.paper}>
              <OnePage page={page} size={size} who={who} {...rest} />
            </div>
          ))}
        </Row>
      </div>
    </div>
  );
}

/** What is good to know before it is printed. */
function Notes({ papers, kind, whom }: { papers: Papers; kind: What; whom: Who }) {
  const { t } = useTranslation("papers");
  const nameless = chosenOf(papers, whom).filter((person) => !isNameable(person)).length;
  const notes =
    kind === "bibs"
      ? [t("note.bibs")]
      : kind === "badges"
        ? [t("note.names"), t("note.badges")]
        : [t("note.names"), ...(nameless > 0 ? [t("note.nameless", { count: nameless })] : [])];
  return (
    <Stack as="ul" gap={2} className={css.notes}>
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </Stack>
  );
}
