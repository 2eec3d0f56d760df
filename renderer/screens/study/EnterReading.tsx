import { useMutation } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import { useSay } from "../../words/say.ts";
import type { SeriesProps } from "./types.ts";

/** Enters one athlete's reading: who, Enter, value, Enter. What is refused stays as it was typed. */
export function EnterReading({ study, series, name }: SeriesProps) {
  const { t } = useTranslation("study");
  const say = useSay();
  const whoField = useRef<HTMLInputElement>(null);
  const markField = useRef<HTMLInputElement>(null);
  const [who, setWho] = useState("");
  const [mark, setMark] = useState("");
  const { send, question, refused, busy, forget } = useEntering({ study, series, name }, () => {
    setWho("");
    setMark("");
    whoField.current?.focus();
  });
  const submit = (sure: boolean) => void send({ who, mark }, sure);
  return (
    <Stack gap={3} align="start">
      <h3>{t("enter.title", { name })}</h3>
      <Row gap={3} wrap align="start">
        <TextField
          label={t(study.study.day === null ? "enter.whoNumber" : "enter.who")}
          value={who}
          onChange={(typed) => {
            setWho(typed);
            forget();
          }}
          inputRef={whoField}
          onEnter={() => markField.current?.focus()}
          maxLength={80}
        />
        <TextField
          label={t("enter.mark")}
          value={mark}
          onChange={(typed) => {
            setMark(typed);
            forget();
          }}
          inputRef={markField}
          onEnter={() => submit(false)}
          maxLength={40}
        />
      </Row>
      {refused !== null && (
        <p role="alert" className="alert">
          {say(refused)}
        </p>
      )}
      {question === null ? (
        <Button busy={busy} onPress={() => submit(false)}>
          {t("enter.do")}
        </Button>
      ) : (
        <Stack gap={2} align="start" role="alert">
          <p>{say(question)}</p>
          <Button busy={busy} onPress={() => submit(true)}>
            {t("enter.sure")}
          </Button>
        </Stack>
      )}
    </Stack>
  );
}

interface Typed {
  readonly who: string;
  readonly mark: string;
}

/** Sends a reading; a retry of the same one has the same id. */
function useEntering({ study, series, name }: SeriesProps, onDone: () => void) {
  const trpc = useTRPC();
  const { ask } = useInitials();
  const { lengths } = useLengthUnit();
  const [id, setId] = useState(() => crypto.randomUUID());
  const [question, setQuestion] = useState<Sentence | null>(null);
  const entering = useMutation(
    trpc.study.enter.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess(answer) {
        if (answer.outcome === "ask") return setQuestion(answer.question);
        tell({
          tone: "done",
          sentence: { key: "study:enter.done", values: { who: answer.name, judge: name } },
        });
        setQuestion(null);
        setId(crypto.randomUUID());
        onDone();
      },
    }),
  );
  async function send(typed: Typed, sure: boolean): Promise<void> {
    const by = await ask();
    if (by === null) return;
    const which = { studyId: study.study.id, position: series.position };
    entering.mutate({ id, ...which, ...typed, by, lengths, sure });
  }
  /** What was asked or refused was about other text. */
  function forget(): void {
    setQuestion(null);
    setId(crypto.randomUUID());
    entering.reset();
  }
  const refused = entering.isError ? sentenceOf(entering.error) : null;
  return { send, question, refused, busy: entering.isPending, forget };
}
