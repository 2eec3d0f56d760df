import { useEffect, useState } from "react";
import { sheetLimits } from "../../../electron/domain/sheets/limits.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { type Client, useTRPCClient } from "../../app/client.tsx";
import { sentenceOf } from "../../app/trouble.ts";
import { asSentence, type Kind } from "../../parts/sheets/sheet.ts";
import { type ChosenSheet, type ChosenSheets, type RehearsalState, slots } from "./rehearsed.ts";

export interface Rehearsal {
  readonly choice: ChosenSheets;
  readonly standing: RehearsalState;
  /** Sets or removes (null) a sheet; the result shown before no longer holds. */
  choose(kind: Kind, sheet: ChosenSheet | null): void;
  /** Shows the shell's refusal of a file that was not read. */
  refuse(kind: Kind, sentence: Sentence): void;
  start(): void;
}

interface Brought {
  readonly roster: string;
  readonly past: string | null;
  readonly results: string | null;
}

/** Holds up to three sheets, and one rehearsal with them at a time; leaving the screen ends it. */
export function useRehearsal(): Rehearsal {
  const client = useTRPCClient();
  const [choice, setChoice] = useState<ChosenSheets>({ roster: null, past: null, results: null });
  const [standing, setStanding] = useState<RehearsalState>({ at: "choosing" });
  const [brought, setBrought] = useState<Brought | null>(null);

  useEffect(() => {
    if (brought === null) return;
    const running = client.rehearsal.run.subscribe(brought, {
      onData(stage) {
        if (stage.stage === "working") setStanding({ at: "working", ...stage });
        else if (stage.stage === "done") setStanding({ at: "done", rehearsed: stage.rehearsed });
        else setStanding({ at: "refused", sheet: stage.sheet, sentence: asSentence(stage.sentence) });
      },
      onError: (error) => setStanding({ at: "refused", sheet: "roster", sentence: sentenceOf(error) }),
    });
    return () => running.unsubscribe();
  }, [client, brought]);

  function stopAt(next: RehearsalState): void {
    setBrought(null);
    setStanding(next);
  }

  function choose(kind: Kind, sheet: ChosenSheet | null): void {
    setChoice({ ...choice, [kind]: sheet });
    const why = sheet === null ? null : refusalOf(sheet);
    stopAt(why === null ? { at: "choosing" } : { at: "refused", sheet: kind, sentence: why });
    if (why !== null) setChoice({ ...choice, [kind]: null });
  }

  function start(): void {
    stopAt({ at: "bringing" });
    bringAll(client, choice).then(setBrought, (error: unknown) =>
      setStanding({ at: "refused", sheet: "roster", sentence: sentenceOf(error) }),
    );
  }
  const refuse = (kind: Kind, sentence: Sentence) => stopAt({ at: "refused", sheet: kind, sentence });
  return { choice, standing, choose, refuse, start };
}

/** Returns the reason to refuse a file without reading it. An empty body would not reach the desk. */
function refusalOf({ content }: ChosenSheet): Sentence | null {
  if (content.size === 0) return { key: "sheets.empty" };
  if (content.size <= sheetLimits.bytes) return null;
  return { key: "sheets.tooBig", values: { megabytes: sheetLimits.bytes / 1024 / 1024 } };
}

/** Uploads the sheets one after another; the desk keeps only three at a time. */
async function bringAll(client: Client, choice: ChosenSheets): Promise<Brought> {
  const ids: Record<Kind, string | null> = { roster: null, past: null, results: null };
  for (const kind of slots) {
    const sheet = choice[kind];
    if (sheet !== null) ids[kind] = (await client.intake.upload.mutate(sheet.content)).uploadId;
  }
  const { roster, past, results } = ids;
  if (roster === null) throw new Error("A rehearsal begins only with a roster.");
  return { roster, past, results };
}
