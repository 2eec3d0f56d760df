import { useQueries } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import { CardSheet } from "./CardSheet.tsx";
import css from "./Cards.module.css";
import { type CardPaper, layOut, type OnSheet } from "./papers.ts";
import {
  type CardData,
  type CardPerson,
  type Cards,
  chosenOf,
  type People,
  type WhichCards,
} from "./which.ts";

interface PreviewProps {
  readonly people: People;
  readonly which: WhichCards;
  readonly paper: CardPaper;
}

/** Shows one sheet of the selection as it will be printed, and the button to the next. */
export function Preview({ people, which, paper }: PreviewProps) {
  const { t } = useTranslation("cards");
  const sheets = layOut(chosenOf(people, which), paper);
  const [wanted, setWanted] = useState(0);
  const at = Math.min(wanted, sheets.length - 1);
  const sheet = sheets[at];
  if (sheet === undefined) return <p>{t("none.one")}</p>;
  return (
    <section className={css.preview} aria-label={t("preview.label")}>
      {sheets.length > 1 && (
        <Row gap={4} align="center">
          <Button disabled={at === 0} onPress={() => setWanted(at - 1)}>
            {t("preview.before")}
          </Button>
          <p aria-live="polite">{t("preview.of", { number: at + 1, count: sheets.length })}</p>
          <Button disabled={at === sheets.length - 1} onPress={() => setWanted(at + 1)}>
            {t("preview.next")}
          </Button>
        </Row>
      )}
      <div className={css.papers}>
        <div className={css.paper}>
          <Sheet people={sheet} dayId={people.day?.id ?? 0} paper={paper} />
        </div>
      </div>
    </section>
  );
}

interface SheetProps {
  readonly people: OnSheet<CardPerson>;
  readonly dayId: number;
  readonly paper: CardPaper;
}

/** Shows one sheet, and reads only its cards, however many are selected. */
function Sheet({ people, dayId, paper }: SheetProps) {
  const trpc = useTRPC();
  const { lengths } = useLengthUnit();
  const ids = people.flatMap((person) => person?.athleteId ?? []);
  const answers = useQueries({
    queries: ids.map((athleteId) =>
      trpc.cards.list.queryOptions({ dayId, which: { kind: "athlete", athleteId }, lengths }),
    ),
  });
  const lists = answers.flatMap(({ data }) => data ?? []);
  const [first] = lists;
  const cards = onSheet(lists, people.length);
  if (first === undefined || cards === null || lists.length < ids.length) return null;
  return <CardSheet cards={cards} paper={paper} lengths={lengths} day={first.day} next={first.next} />;
}

function onSheet(lists: readonly Cards[], places: number): OnSheet<CardData> | null {
  const [left, right] = lists.flatMap(({ cards }) => cards);
  if (left === undefined) return null;
  return places === 1 ? [left] : [left, right ?? null];
}
