import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { Card } from "./Card.tsx";
import css from "./CardSheet.module.css";
import { type CardPaper, cardSize, type OnSheet } from "./papers.ts";
import type { CardData, Cards } from "./which.ts";

interface CardSheetProps extends Pick<Cards, "day" | "next"> {
  readonly cards: OnSheet<CardData>;
  readonly paper: CardPaper;
  readonly lengths: LengthUnit;
}

/** Lays out one sheet of paper: a card, or two side by side with the line to cut along. */
export function CardSheet({ cards, paper, lengths, day, next }: CardSheetProps) {
  return (
    <div className={`${css.sheet} print-sheet`} data-paper={paper}>
      {cards.map(
        (card) =>
          card !== null && (
            <Card
              key={card.athleteId}
              card={card}
              day={day}
              next={next}
              size={cardSize(paper)}
              lengths={lengths}
            />
          ),
      )}
      {cards.length === 2 && <div className={css.cut} aria-hidden="true" />}
    </div>
  );
}
