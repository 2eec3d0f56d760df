import { type ReactNode, useEffect, useRef } from "react";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { AheadNote } from "./AheadNote.tsx";
import type { AheadBox } from "./ahead.ts";
import css from "./Notice.module.css";
import { isOfBib, useHeldKeys } from "./useHeldKeys.ts";

/** An answer that goes on, by a key of its own that nobody presses by habit. */
interface DoubtAnswer {
  readonly key: string;
  readonly text: string;
  readonly choose: () => void;
}

interface DoubtProps {
  /** What is doubtful. */
  readonly children: ReactNode;
  /** The safe answer: first, with the focus, and by Escape. */
  readonly no: string;
  readonly onNo: () => void;
  readonly answers: readonly DoubtAnswer[];
  /** Keeps a bib that is typed meanwhile; left out where no next athlete comes. */
  readonly box?: AheadBox;
}

/** Ms in which another Enter belongs to the one before it: a finger that bounces, or did not look yet. */
const bounceMs = 600;

/**
 * Asks about something in place, right above the fields that it is about. Enter never goes on: whoever types heads down
 * has not seen it. Digits are the next bib, and are kept until there is an answer.
 */
export function Doubt({ children, no, onNo, answers, box }: DoubtProps) {
  const place = useRef<HTMLDivElement>(null);
  const shownAt = useRef(performance.now());
  useEffect(() => {
    // In newer browsers this returns a promise, which React would take for what cleans up, and call.
    place.current?.scrollIntoView({ block: "nearest" });
  }, []);
  useHeldKeys(place, (key, { repeat, timeStamp }) => {
    const answer = answers.find((each) => each.key === key.toUpperCase());
    if (answer !== undefined) return repeat ? nothing : answer.choose;
    if (key === "Escape") return onNo;
    if (key === "Enter" && (box === undefined || box.ahead.bib === "")) {
      return repeat || timeStamp - shownAt.current < bounceMs ? nothing : onNo;
    }
    return box !== undefined && isOfBib(key) ? () => box.type(key) : undefined;
  });
  return (
    <div className={css.notice} role="alert" ref={place}>
      {children}
      <Row gap={3} wrap>
        <Button kind="primary" hint="Esc" onPress={onNo} autoFocus>
          {no}
        </Button>
        {answers.map(({ key, text, choose }) => (
          <Button key={key} hint={key} onPress={choose}>
            {text}
          </Button>
        ))}
      </Row>
      {box !== undefined && <AheadNote ahead={box.ahead} />}
    </div>
  );
}

function nothing(): void {
  // The key is taken, so that it does nothing elsewhere either.
}
