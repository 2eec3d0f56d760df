import { useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { type Message, tell, useMessage } from "../../app/messages.ts";
import { useSay } from "../../words/say.ts";
import { Button } from "../controls/Button.tsx";
import { Row } from "../flow/Stack.tsx";
import css from "./MessageStrip.module.css";
import { useGoing, useLeaving, useReturn } from "./useGoing.ts";

const signs: Record<Message["tone"], string> = {
  done: "m5 12.5 5 5L19.5 6",
  note: "M12 10v9M12 4.5v2",
  alert: "M12 4v10M12 17.5v2",
};

interface MessageStripProps {
  /** Names the day at hand: a message of one is none of another. */
  readonly day: string;
}

/**
 * The one place for messages, which lies over nothing. The live region stays in the page, so that each new message is read
 * out politely; a message waits while the mouse or the keyboard is on it.
 */
export function MessageStrip({ day }: MessageStripProps) {
  const { t } = useTranslation("common");
  const say = useSay();
  const message = useMessage();
  const action = message?.action;
  const [path] = useLocation();
  const [isHeld, setHeld] = useState(false);
  const strip = useRef<HTMLDivElement>(null);
  const { note, goBack } = useReturn(strip);
  const said = message === null ? "" : say(message.sentence);
  useGoing(message, said.length, isHeld);
  useLeaving("day", day);
  useLeaving("screen", path.split("/").slice(0, 3).join("/"));
  function press(act: () => void): void {
    goBack();
    setHeld(false);
    act();
  }
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only watches who is on it, and does nothing itself
    <div
      ref={strip}
      className={css.strip}
      data-tone={message?.tone ?? "none"}
      onPointerEnter={() => setHeld(true)}
      onPointerLeave={() => setHeld(false)}
      onPointerDownCapture={note}
      onFocus={() => setHeld(true)}
      onBlur={() => setHeld(false)}
    >
      <Row gap={3} align="center" className={`strong ${css.words}`} role="status">
        {message !== null && (
          <>
            <svg className={css.sign} viewBox="0 0 24 24" aria-hidden="true">
              <path d={signs[message.tone]} />
            </svg>
            {said}
          </>
        )}
      </Row>
      {action !== undefined && <Button onPress={() => press(action.act)}>{say(action.label)}</Button>}
      {message !== null && (
        <Button label={t("message.close")} keepsFocus onPress={() => press(() => tell(null))}>
          <svg className={css.cross} viewBox="0 0 16 16" aria-hidden="true">
            <path d="m2 2 12 12M14 2 2 14" />
          </svg>
        </Button>
      )}
    </div>
  );
}
