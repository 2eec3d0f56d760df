import { useMutation } from "@tanstack/react-query";
import { useEffect, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { useKeys } from "../../app/keys.ts";
import { useSteady } from "../../app/steady.ts";
import { useTestWords } from "../../app/testWords.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { TextField } from "../../parts/controls/TextField.tsx";
import { useSay } from "../../words/say.ts";
import type { Corrections } from "./drafts.ts";
import { KeyedEntry, type KeyedEntryHandle } from "./entry/KeyedEntry.tsx";
import { HistoryDialog } from "./HistoryDialog.tsx";
import { Queue } from "./Queue.tsx";
import { Recent } from "./Recent.tsx";
import { Rules } from "./Rules.tsx";
import css from "./Station.module.css";
import type { AttemptView, StationPerson, StationView } from "./types.ts";

interface StationProps {
  readonly test: TestCode;
  readonly view: StationView;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
  readonly corrections: Corrections;
}

/** The dialog open over the screen. */
type Over =
  | { readonly what: "history"; readonly attempt: AttemptView }
  | { readonly what: "skip"; readonly who: StationPerson; readonly test: TestCode };

/** Shows an open station: the entry, the rules beside it, the queue, and the newest attempts. */
export function Station({ test, view, lengths, setLengths, corrections }: StationProps) {
  const trpc = useTRPC();
  const entry = useRef<KeyedEntryHandle>(null);
  const [over, setOver] = useState<Over | null>(null);
  const { folded, fold } = useFolded("rules");
  const steadyFold = useSteady(fold);
  const correct = useSteady(corrections.correct);
  const askToSkip = useSteady((who: StationPerson, before: TestCode) =>
    setOver({ what: "skip", who, test: before }),
  );
  const call = useMutation(trpc.station.callAthlete.mutationOptions());
  const uncall = useMutation(trpc.station.uncall.mutationOptions());
  const callNext = useMutation(trpc.station.callNext.mutationOptions());
  const unskip = useMutation(trpc.station.unskip.mutationOptions());
  useKeys({ "Alt+N": () => callNext.mutate({ test }), "Alt+R": fold });
  const isCorrecting = corrections.open !== null;
  const wasCorrecting = useRef(isCorrecting);
  useEffect(() => {
    if (wasCorrecting.current && !isCorrecting) entry.current?.again();
    wasCorrecting.current = isCorrecting;
  }, [isCorrecting]);

  function close(): void {
    setOver(null);
    entry.current?.again();
  }

  return (
    <div className={css.station} data-folded={folded} data-tight>
      <div className={css.work}>
        <KeyedEntry
          ref={entry}
          {...{ test, lengths, setLengths }}
          parameters={view.parameters}
          onCorrect={correct}
          onSkip={askToSkip}
        />
        <Recent
          recent={view.recent}
          parameters={view.parameters}
          lengths={lengths}
          onCorrect={correct}
          onHistory={(attempt) => setOver({ what: "history", attempt })}
        />
      </div>
      <div className={css.rules}>
        <Rules test={test} parameters={view.parameters} folded={folded} onFold={steadyFold} />
      </div>
      <div className={css.queue}>
        <Queue
          {...{ test, view, lengths }}
          onPick={(bib) => entry.current?.pick(bib)}
          onCall={({ athleteId }, called) =>
            called ? uncall.mutate({ athleteId, test }) : call.mutate({ athleteId, test })
          }
          onCallNext={() => callNext.mutate({ test })}
          onTakeBack={(athleteId) => unskip.mutate({ athleteId, test })}
        />
      </div>
      {over?.what === "history" && <HistoryDialog attempt={over.attempt} lengths={lengths} onClose={close} />}
      {over?.what === "skip" && <SkipDialog who={over.who} test={over.test} onClose={close} />}
    </div>
  );
}

/** Returns whether a part of the screen is folded away, a choice kept on this desk. */
function useFolded(name: string): { folded: boolean; fold: () => void } {
  const place = `folded.${name}`;
  const [folded, setFolded] = useState(() => localStorage.getItem(place) === "yes");
  function fold(): void {
    localStorage.setItem(place, folded ? "no" : "yes");
    setFolded(!folded);
  }
  return { folded, fold };
}

interface SkipDialogProps {
  readonly who: StationPerson;
  readonly test: TestCode;
  readonly onClose: (skipped: boolean) => void;
}

/** Skips a test for an athlete, with the reason that the protocol asks for. */
function SkipDialog({ who, test, onClose }: SkipDialogProps) {
  const { t } = useTranslation("station");
  const testWord = useTestWords();
  const say = useSay();
  const trpc = useTRPC();
  const { ask } = useInitials();
  const skip = useMutation(trpc.station.skip.mutationOptions({ meta: { shownByScreen: true } }));
  const [reason, setReason] = useState("");
  const [refused, setRefused] = useState<Sentence | null>(null);

  async function submit(): Promise<void> {
    const by = await ask();
    if (by === null || skip.isPending) return;
    try {
      await skip.mutateAsync({ athleteId: who.athleteId, test, reason, by });
      onClose(true);
    } catch (error) {
      setRefused(sentenceOf(error));
    }
  }

  return (
    <Dialog
      onClose={() => onClose(false)}
      title={t("skip.title", { name: who.name })}
      actions={
        <>
          <Button hint="Esc" onPress={() => onClose(false)}>
            {t("skip.cancel")}
          </Button>
          <Button kind="primary" hint="Enter" busy={skip.isPending} onPress={() => void submit()}>
            {t("skip.do")}
          </Button>
        </>
      }
    >
      <p>{testWord(test, "skip")}</p>
      <TextField
        label={t("skip.reason")}
        help={t("skip.reasonHelp")}
        value={reason}
        onChange={(typed) => {
          setReason(typed);
          setRefused(null);
        }}
        error={refused === null ? null : say(refused)}
        maxLength={200}
        autoFocus
        onEnter={() => void submit()}
      />
    </Dialog>
  );
}
