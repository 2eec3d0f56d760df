import { useMutation } from "@tanstack/react-query";
import { useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { useLengthUnit } from "../../words/lengths.ts";
import { useMarkText } from "../../words/marks.ts";
import { useSay } from "../../words/say.ts";
import type { StudyRow, StudyView } from "./types.ts";
import { useSeriesName } from "./words.ts";

interface CorrectReadingProps {
  readonly study: StudyView;
  readonly row: StudyRow;
  readonly onClose: () => void;
}

/** Asks which reading of an athlete is wrong, for the right one, and why; or takes it out. Enter goes on, and saves. */
export function CorrectReading({ study, row, onClose }: CorrectReadingProps) {
  const { t } = useTranslation("study");
  const say = useSay();
  const nameOf = useSeriesName();
  const own = study.series.filter(({ day, position }) => day === null && row.values[position - 1] != null);
  const [position, setPosition] = useState(own[0]?.position ?? 0);
  const [mark, setMark] = useState("");
  const [reason, setReason] = useState("");
  const [tried, setTried] = useState(false);
  const reasonField = useRef<HTMLInputElement>(null);
  const { send, asked, refused, busy } = useCorrecting(study, row, onClose);
  const isEmpty = mark.trim() === "";
  // A question was about the mark of then.
  const question = asked?.mark === mark ? asked.question : null;

  function submit(way: "correct" | "cancel"): void {
    setTried(true);
    if (reason.trim() === "" || (way === "correct" && isEmpty)) return;
    void send({ position, mark: way === "correct" ? mark : null, reason });
  }
  return (
    <Dialog
      open
      kind="question"
      onClose={onClose}
      title={t("correct.title", { name: row.name })}
      actions={
        <>
          <Button onPress={onClose}>{t("correct.close")}</Button>
          <Button kind="danger" busy={busy} onPress={() => submit("cancel")}>
            {t("correct.cancel")}
          </Button>
          <Button kind="primary" busy={busy} onPress={() => submit("correct")}>
            {question === null ? t("correct.do") : t("correct.sure")}
          </Button>
        </>
      }
    >
      {own.length > 1 && (
        <Choice
          label={t("correct.which")}
          options={own.map((each) => ({ value: String(each.position), label: nameOf(each) }))}
          value={String(position)}
          onChange={(chosen) => setPosition(Number(chosen))}
        />
      )}
      <Held study={study} row={row} position={position} />
      <TextField
        label={t("correct.mark")}
        value={mark}
        onChange={setMark}
        error={tried && isEmpty ? t("correct.markEmpty") : refused}
        onEnter={() => reasonField.current?.focus()}
        maxLength={40}
        autoFocus
      />
      <TextField
        label={t("correct.reason")}
        value={reason}
        onChange={setReason}
        error={tried && reason.trim() === "" ? t("correct.reasonEmpty") : null}
        inputRef={reasonField}
        // Enter alone never says that an unusual reading is right.
        onEnter={() => question === null && submit("correct")}
        maxLength={200}
      />
      {question !== null && <p role="alert">{say(question)}</p>}
    </Dialog>
  );
}

interface HeldProps extends Pick<CorrectReadingProps, "study" | "row"> {
  readonly position: number;
}

/** Says whose reading is being corrected, and what it is now. */
function Held({ study: { study, series }, row, position }: HeldProps) {
  const { t } = useTranslation("study");
  const nameOf = useSeriesName();
  const markText = useMarkText();
  const own = series.find((each) => each.position === position);
  const held = row.values[position - 1];
  if (own === undefined || held == null) return null;
  return <p>{t(`correct.held.${study.kind}`, { name: nameOf(own), held: markText(held) })}</p>;
}

interface Correction {
  readonly position: number;
  readonly mark: string | null;
  readonly reason: string;
}

/** Sends a correction; one id for all tries, so that a retry corrects nothing twice. */
function useCorrecting({ study: { id: studyId } }: StudyView, { athleteId }: StudyRow, onDone: () => void) {
  const say = useSay();
  const trpc = useTRPC();
  const { ask } = useInitials();
  const { lengths } = useLengthUnit();
  const [id] = useState(() => crypto.randomUUID());
  const [asked, setAsked] = useState<{ readonly mark: string | null; readonly question: Sentence } | null>(
    null,
  );
  const correcting = useMutation(
    trpc.study.correct.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess(answer, { mark }) {
        if (answer.outcome === "ask") return setAsked({ mark, question: answer.question });
        tell({ tone: "done", sentence: { key: "study:correct.done", values: { name: answer.name } } });
        onDone();
      },
    }),
  );
  async function send(correction: Correction): Promise<void> {
    const by = await ask();
    if (by === null) return;
    const sure = asked !== null && asked.mark === correction.mark;
    correcting.mutate({ id, studyId, athleteId, ...correction, by, lengths, sure });
  }
  const refused = correcting.isError ? say(sentenceOf(correcting.error)) : null;
  return { send, asked, refused, busy: correcting.isPending };
}
