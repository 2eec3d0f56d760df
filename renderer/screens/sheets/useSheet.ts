import { useCallback, useEffect, useState } from "react";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import {
  asSentence,
  type ColumnMapping,
  isOtherSheet,
  type Kind,
  mapped,
  type SaidOfAll,
  type SheetState,
  type Taken,
  whyUnread,
} from "../../parts/sheets/sheet.ts";

/** An uploaded sheet; it is read again when the kind or the mapping changes. */
interface InHand {
  readonly uploadId: string;
  /** Null: as its headers say. */
  readonly kind: Kind | null;
  readonly mapping: ColumnMapping;
  readonly said: Said;
  /** True until the person decides something: then columns are read as in the last such sheet. */
  readonly recall: boolean;
}

/** The person's decisions about the sheet, as the API takes them. */
interface Said extends SaidOfAll {
  /** Line → column (from 0) → text. */
  readonly edits?: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly leftOut?: readonly number[];
  /** Who is who: question → one of its candidates (from 0), or none of them. */
  readonly answers?: Readonly<Record<string, number | "new">>;
}

export interface SheetInHand {
  readonly name: string | null;
  readonly uploadId: string | null;
  /** As the person decided; null: as its headers say. */
  readonly kind: Kind | null;
  readonly mapping: ColumnMapping;
  readonly standing: SheetState;
  /** The API's input to import the sheet as it is read now. */
  readonly asked: ReturnType<typeof askedOf> | null;
  bring(file: { readonly name: string; readonly content: Blob }): void;
  /** Shows the shell's refusal of a file that was not read. */
  refuse(name: string, sentence: Sentence): void;
  readAs(kind: Kind): void;
  /** Assigns a header to a field; an empty header: none. */
  map(field: string, header: string): void;
  readonly said: Said;
  /**
   * Decides something about the whole sheet. Another row of headers or worksheet is another sheet: its mapping starts
   * again.
   */
  say(more: Said): void;
  /** Corrects cells of a row; column (from 0) → text. */
  putRight(line: number, cells: Readonly<Record<string, string>>): void;
  leaveOut(line: number): void;
  bringBack(line: number): void;
  readAgain(): void;
  isTaken(taken: Taken): void;
  /** Closes the sheet; imported rows stay. */
  putAway(): void;
}

const none: SheetState = { step: "none" };

/** Holds the one current sheet: uploads it, reads it again at every change, imports it. */
export function useSheet(): SheetInHand {
  const client = useTRPCClient();
  const [name, setName] = useState<string | null>(null);
  const [inHand, setInHand] = useState<InHand | null>(null);
  const [standing, setStanding] = useState<SheetState>(none);

  useEffect(() => {
    if (inHand === null) return;
    const subscription = client.intake.read.subscribe(
      { ...askedOf(inHand), recall: inHand.recall },
      {
        onData(stage) {
          if (stage.stage === "reading") setStanding((before) => progressed(before, stage.done, stage.total));
          else if (stage.stage === "preview") {
            setStanding({ step: "preview", preview: stage.preview });
            const { mapping } = stage.preview;
            // From now on the recalled mapping counts as the person's own.
            if (inHand.recall && Object.keys(mapping).length > 0)
              setInHand({ ...inHand, mapping, recall: false });
          } else setStanding({ step: "refused", sentence: asSentence(stage.sentence) });
        },
        onError: (error) => setStanding({ step: "refused", sentence: sentenceOf(error) }),
      },
    );
    return () => subscription.unsubscribe();
  }, [client, inHand]);

  const refuse = useCallback((refusedName: string, sentence: Sentence) => {
    setName(refusedName);
    setInHand(null);
    setStanding({ step: "refused", sentence });
  }, []);

  function bring({ name: broughtName, content }: { name: string; content: Blob }): void {
    const why = whyUnread(content);
    if (why !== null) {
      refuse(broughtName, why);
      return;
    }
    tell(null);
    setName(broughtName);
    setInHand(null);
    setStanding({ step: "bringing" });
    client.intake.upload.mutate(content).then(
      ({ uploadId }) => setInHand({ uploadId, kind: null, mapping: {}, said: {}, recall: true }),
      (error: unknown) => setStanding({ step: "refused", sentence: sentenceOf(error) }),
    );
  }

  function change(changes: Partial<InHand>): void {
    if (inHand !== null) setInHand({ ...inHand, recall: false, ...changes });
  }

  const said = inHand?.said ?? {};
  return {
    name,
    uploadId: inHand?.uploadId ?? null,
    kind: inHand?.kind ?? null,
    mapping: inHand?.mapping ?? {},
    said,
    asked: inHand === null ? null : askedOf(inHand),
    standing,
    bring,
    refuse,
    readAs: (kind) => change({ kind, mapping: {}, recall: true }),
    map: (field, header) => change({ mapping: mapped(inHand?.mapping ?? {}, field, header) }),
    say: (more) =>
      change({ said: { ...said, ...more }, ...(isOtherSheet(more) && { mapping: {}, recall: true }) }),
    putRight(line, cells) {
      const before = said.edits ?? {};
      change({ said: { ...said, edits: { ...before, [line]: { ...before[line], ...cells } } } });
    },
    leaveOut: (line) => change({ said: { ...said, leftOut: [...(said.leftOut ?? []), line] } }),
    bringBack: (line) =>
      change({ said: { ...said, leftOut: (said.leftOut ?? []).filter((each) => each !== line) } }),
    readAgain: () => change({}),
    isTaken: (taken) => setStanding({ step: "taken", taken }),
    putAway() {
      setName(null);
      setInHand(null);
      setStanding(none);
    },
  };
}

/** Returns a sheet with all decisions about it, as the API takes them. */
function askedOf({ uploadId, kind, mapping, said }: InHand) {
  const { edits = {}, leftOut = [], ...rest } = said;
  const asked = { ...rest, uploadId, mapping, edits, leftOut: [...leftOut] };
  return kind === null ? asked : { ...asked, kind };
}

/** Keeps what is shown of the sheet while it is read in another way, so that nobody loses their place. */
function progressed(before: SheetState, done: number, total: number): SheetState {
  return before.step === "bringing" || before.step === "reading" ? { step: "reading", done, total } : before;
}

/** Returns true if the day is missing, rather than the sheet being wrong. */
export function isAboutTheDay(sentence: Sentence): boolean {
  return sentence.key.startsWith("day.");
}
