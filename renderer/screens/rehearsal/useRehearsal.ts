import { useEffect, useState } from "react";
import type { Sentence } from "../../../electron/domain/words.ts";
import type { Questions } from "../../app/answers.ts";
import { type Client, useTRPCClient } from "../../app/client.tsx";
import { sentenceOf } from "../../app/trouble.ts";
import { asSentence, type Kind, type SaidOfAll, whyUnread } from "../../parts/sheets/sheet.ts";
import { type ChosenSheet, type ChosenSheets, mostOf, type RehearsalState, slots } from "./rehearsed.ts";

export interface Rehearsal {
  readonly choice: ChosenSheets;
  readonly standing: RehearsalState;
  /** Adds a sheet, or puts it in place of the one that was there. What was told of the rehearsal before ends with that. */
  choose(kind: Kind, sheet: Pick<ChosenSheet, "name" | "content">): void;
  /** Takes the sheet at that place (from 0) out. */
  takeOut(kind: Kind, place: number): void;
  /** Says something of a sheet as a whole, and rehearses again. */
  say(kind: Kind, file: string, more: SaidOfAll): void;
  /** The shell refused a file before anything of it was read. */
  refuse(kind: Kind, sentence: Sentence): void;
  start(): void;
}

type Brought = Questions["rehearsal"]["run"];

/** The sheets of a day, and one rehearsal with them at a time; leaving the screen ends it. */
export function useRehearsal(): Rehearsal {
  const client = useTRPCClient();
  const [choice, setChoice] = useState<ChosenSheets>({ roster: [], past: [], results: [] });
  const [standing, setStanding] = useState<RehearsalState>({ at: "choosing" });
  const [brought, setBrought] = useState<Brought | null>(null);

  useEffect(() => {
    if (brought === null) return;
    const running = client.rehearsal.run.subscribe(brought, {
      onData(stage) {
        if (stage.stage === "working") setStanding({ at: "working", ...stage });
        else if (stage.stage === "done") setStanding({ at: "done", rehearsed: stage.rehearsed });
        else {
          const { sheet, sentence, file, form } = stage;
          const unread = form === null ? null : { file, form };
          setStanding({ at: "refused", sheet, sentence: asSentence(sentence), unread });
        }
      },
      onError: (error) => setStanding(refusedFor("roster", sentenceOf(error))),
    });
    return () => running.unsubscribe();
  }, [client, brought]);

  function stopAt(next: RehearsalState): void {
    setBrought(null);
    setStanding(next);
  }

  function choose(kind: Kind, chosen: Pick<ChosenSheet, "name" | "content">): void {
    const why = whyUnread(chosen.content);
    if (why !== null) {
      stopAt(refusedFor(kind, why));
      return;
    }
    const sheet = { ...chosen, said: {} };
    // A file of that name was put right meanwhile: it takes the other's place.
    const others = choice[kind].filter(({ name }) => name !== sheet.name);
    setChoice({ ...choice, [kind]: [...others, sheet].slice(-mostOf[kind]) });
    stopAt({ at: "choosing" });
  }

  function takeOut(kind: Kind, place: number): void {
    setChoice({ ...choice, [kind]: choice[kind].filter((_sheet, index) => index !== place) });
    stopAt({ at: "choosing" });
  }

  function run(sheets: ChosenSheets): void {
    stopAt({ at: "bringing" });
    bringAll(client, sheets).then(setBrought, (error: unknown) =>
      setStanding(refusedFor("roster", sentenceOf(error))),
    );
  }

  function say(kind: Kind, file: string, more: SaidOfAll): void {
    const said = choice[kind].map((sheet) =>
      sheet.name === file ? { ...sheet, said: { ...sheet.said, ...more } } : sheet,
    );
    const sheets = { ...choice, [kind]: said };
    setChoice(sheets);
    run(sheets);
  }
  const refuse = (kind: Kind, sentence: Sentence) => stopAt(refusedFor(kind, sentence));
  return { choice, standing, choose, takeOut, say, refuse, start: () => run(choice) };
}

function refusedFor(sheet: Kind, sentence: Sentence): RehearsalState {
  return { at: "refused", sheet, sentence, unread: null };
}

/** Uploads the sheets one after another; the desk keeps only three at a time. */
async function bringAll(client: Client, choice: ChosenSheets): Promise<Brought> {
  const brought: Record<Kind, Brought["rosters"]> = { roster: [], past: [], results: [] };
  for (const kind of slots) {
    for (const { name, content, said } of choice[kind]) {
      const { uploadId } = await client.intake.upload.mutate(content);
      brought[kind].push({ uploadId, name, said });
    }
  }
  const { roster: rosters, past, results } = brought;
  if (rosters.length === 0) throw new Error("A rehearsal begins only with a roster.");
  return { rosters, past: past[0] ?? null, results: results[0] ?? null };
}
