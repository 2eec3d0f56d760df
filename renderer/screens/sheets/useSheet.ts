import { useCallback, useEffect, useState } from "react";
import { sheetLimits } from "../../../electron/domain/sheets/limits.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { asSentence, type Kind, type SheetState, type Taken } from "../../parts/sheets/sheet.ts";

/** A sheet that was brought to the desk; it is read anew when the kind or the mapping changes. */
interface InHand {
  readonly uploadId: string;
  /** null: what its headers say. */
  readonly kind: Kind | null;
  readonly mapping: Readonly<Record<string, string>>;
  readonly said: Said;
  /** Nobody has said anything yet: its columns are read as those of such a sheet were last time. */
  readonly recall: boolean;
}

/** What a person says of the sheet that the sheet does not say itself, as the door takes it. */
interface Said {
  readonly headerLine?: number;
  readonly worksheet?: number;
  readonly league?: string;
  readonly date?: string;
  readonly dateOrder?: "day" | "month";
  /** Line → column (from 0) → text. */
  readonly edits?: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly leftOut?: readonly number[];
}

export interface SheetInHand {
  readonly name: string | null;
  readonly uploadId: string | null;
  /** As the person said; null: what its headers say. */
  readonly kind: Kind | null;
  readonly mapping: Readonly<Record<string, string>>;
  readonly standing: SheetState;
  /** What the door is asked with to import the sheet as it is read now. */
  readonly asked: ReturnType<typeof askedOf> | null;
  bring(file: { readonly name: string; readonly content: Blob }): void;
  /** The shell has refused a file before anything of it was read. */
  refuse(name: string, key: string): void;
  readAs(kind: Kind): void;
  /** Which header stands for which field; an empty header: none. */
  map(field: string, header: string): void;
  readonly said: Said;
  /** Says something of the whole sheet. Other headers or another worksheet are another sheet: columns are told anew. */
  say(more: Said): void;
  /** Puts cells of a row right; column (from 0) → text. */
  putRight(line: number, cells: Readonly<Record<string, string>>): void;
  leaveOut(line: number): void;
  bringBack(line: number): void;
  readAgain(): void;
  isTaken(taken: Taken): void;
  /** Puts the sheet away; what was taken in stays. */
  putAway(): void;
}

const none: SheetState = { step: "none" };

/** The one sheet that is looked at: brought, read as often as something about it changes, taken in. */
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
            // From here on it is as if it had been said now.
            if (inHand.recall && Object.keys(mapping).length > 0)
              setInHand({ ...inHand, mapping, recall: false });
          } else setStanding({ step: "refused", sentence: asSentence(stage.sentence) });
        },
        onError: (error) => setStanding({ step: "refused", sentence: sentenceOf(error) }),
      },
    );
    return () => subscription.unsubscribe();
  }, [client, inHand]);

  const refuse = useCallback((refusedName: string, key: string) => {
    setName(refusedName);
    setInHand(null);
    setStanding({ step: "refused", sentence: { key, values: { megabytes } } });
  }, []);

  function bring({ name: broughtName, content }: { name: string; content: Blob }): void {
    if (content.size > sheetLimits.bytes) {
      refuse(broughtName, "sheets.tooBig");
      return;
    }
    // An empty body does not get through to the desk.
    if (content.size === 0) {
      refuse(broughtName, "sheets.empty");
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

/** A sheet and all that is said of it, as the door takes it. */
function askedOf({ uploadId, kind, mapping, said }: InHand) {
  const { edits = {}, leftOut = [], ...rest } = said;
  const asked = { ...rest, uploadId, mapping, edits, leftOut: [...leftOut] };
  return kind === null ? asked : { ...asked, kind };
}

function isOtherSheet({ headerLine, worksheet }: Said): boolean {
  return headerLine !== undefined || worksheet !== undefined;
}

const megabytes = sheetLimits.bytes / 1024 / 1024;

/** What was shown of the sheet stays while it is read in another way, so that nobody loses their place. */
function progressed(before: SheetState, done: number, total: number): SheetState {
  return before.step === "bringing" || before.step === "reading" ? { step: "reading", done, total } : before;
}

/** A column stands for one field only: choosing it anew takes it from the other. */
function mapped(
  before: Readonly<Record<string, string>>,
  field: string,
  header: string,
): Record<string, string> {
  const others = Object.entries(before).filter(([key, value]) => key !== field && value !== header);
  return Object.fromEntries(header === "" ? others : [...others, [field, header]]);
}

/** Whether it is the day that is missing, and not the sheet that is wrong. */
export function isAboutTheDay(sentence: Sentence): boolean {
  return sentence.key.startsWith("day.");
}
