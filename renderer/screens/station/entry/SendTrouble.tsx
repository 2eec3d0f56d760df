import { useTranslation } from "react-i18next";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useSay } from "../../../words/say.ts";
import type { StationPerson } from "../types.ts";
import type { AheadBox } from "./ahead.ts";
import { Doubt } from "./Doubt.tsx";
import css from "./Notice.module.css";
import type { Sending } from "./useSend.ts";

interface SendTroubleProps {
  readonly sending: Sending;
  /** Sends the same entry again; `sure` after a yes. */
  readonly onSend: (sure: boolean) => void;
  /** Writes a field anew, then sends. */
  readonly onWrite: (field: string, text: string) => void;
  readonly onNo: () => void;
  readonly box?: AheadBox;
  /** Whose entry it is, for a question that has to be compared with the person; left out where the heading says it. */
  readonly who?: StationPerson;
}

/** Shows what keeps an entry from being saved: a question, a refusal, or no answer. */
export function SendTrouble(props: SendTroubleProps) {
  const { sending, onSend } = props;
  const { t } = useTranslation("station");
  const say = useSay();
  switch (sending.state) {
    case "asked":
      return <Asked {...props} questions={sending.questions} />;
    case "either":
      return <Either {...props} either={sending.either} />;
    case "declined":
      return (
        <p className={css.notice} data-tone="note" role="status">
          {t("ask.declined", { questions: sending.questions.map(say).join(" ") })}
        </p>
      );
    case "refused":
      return (
        <div className={css.notice} role="alert">
          <p>{say(sending.sentence)}</p>
          {sending.again && (
            <Row gap={3} wrap>
              <Button kind="primary" hint="Enter" onPress={() => onSend(false)} autoFocus>
                {t("entry.again")}
              </Button>
            </Row>
          )}
        </div>
      );
    default:
      return null;
  }
}

type Of<State extends Sending["state"]> = Extract<Sending, { state: State }>;

/** The name beside the question: on a phone the one above the fields has gone out of sight. */
function Whose({ who }: Pick<SendTroubleProps, "who">) {
  const { t } = useTranslation("station");
  if (who === undefined) return null;
  return (
    <p className="strong">
      {t("athlete.bib", { bib: who.bib })} · {who.name}
    </p>
  );
}

function Asked({ questions, onSend, onNo, box, who }: SendTroubleProps & Omit<Of<"asked">, "state">) {
  const { t } = useTranslation("station");
  const say = useSay();
  return (
    <Doubt
      no={t("ask.no")}
      onNo={onNo}
      answers={[{ key: "Y", text: t("ask.yes"), choose: () => onSend(true) }]}
      {...(box !== undefined && { box })}
    >
      <Whose {...(who !== undefined && { who })} />
      {questions.map((question) => (
        <p key={question.key}>
          <strong className={`figures ${css.title}`}>{t("ask.title")}</strong> {say(question)}
        </p>
      ))}
      <p className="small quiet">{t("ask.how")}</p>
    </Doubt>
  );
}

/** A time whose colon may have been left out: each reading has its key. */
function Either({ either, onWrite, onNo, box, who }: SendTroubleProps & Omit<Of<"either">, "state">) {
  const { t } = useTranslation("station");
  const { field, minutes, seconds, clock } = either;
  return (
    <Doubt
      no={t("ask.no")}
      onNo={onNo}
      answers={[
        { key: "M", text: t("ask.minutes", { minutes }), choose: () => onWrite(field, minutes) },
        { key: "S", text: t("ask.seconds", { seconds, clock }), choose: () => onWrite(field, seconds) },
      ]}
      {...(box !== undefined && { box })}
    >
      <Whose {...(who !== undefined && { who })} />
      <p>
        <strong className={`figures ${css.title}`}>{t("ask.either", { minutes, seconds, clock })}</strong>
      </p>
      <p className="small quiet">{t("ask.how")}</p>
    </Doubt>
  );
}
