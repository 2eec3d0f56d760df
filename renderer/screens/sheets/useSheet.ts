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
}

export interface SheetInHand {
  readonly name: string | null;
  readonly uploadId: string | null;
  /** As the person said; null: what its headers say. */
  readonly kind: Kind | null;
  readonly mapping: Readonly<Record<string, string>>;
  readonly standing: SheetState;
  bring(file: { readonly name: string; readonly content: Blob }): void;
  /** The shell has refused a file before anything of it was read. */
  refuse(name: string, key: string): void;
  readAs(kind: Kind): void;
  /** Which header stands for which field; an empty header: none. */
  map(field: string, header: string): void;
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
    const { kind, ...rest } = inHand;
    const subscription = client.intake.read.subscribe(kind === null ? rest : { ...rest, kind }, {
      onData(stage) {
        if (stage.stage === "reading") setStanding((before) => progressed(before, stage.done, stage.total));
        else if (stage.stage === "preview") setStanding({ step: "preview", preview: stage.preview });
        else setStanding({ step: "refused", sentence: asSentence(stage.sentence) });
      },
      onError: (error) => setStanding({ step: "refused", sentence: sentenceOf(error) }),
    });
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
      ({ uploadId }) => setInHand({ uploadId, kind: null, mapping: {} }),
      (error: unknown) => setStanding({ step: "refused", sentence: sentenceOf(error) }),
    );
  }

  function change(changes: Partial<InHand>): void {
    if (inHand !== null) setInHand({ ...inHand, ...changes });
  }

  return {
    name,
    uploadId: inHand?.uploadId ?? null,
    kind: inHand?.kind ?? null,
    mapping: inHand?.mapping ?? {},
    standing,
    bring,
    refuse,
    readAs: (kind) => change({ kind, mapping: {} }),
    map: (field, header) => change({ mapping: mapped(inHand?.mapping ?? {}, field, header) }),
    readAgain: () => change({}),
    isTaken: (taken) => setStanding({ step: "taken", taken }),
    putAway() {
      setName(null);
      setInHand(null);
      setStanding(none);
    },
  };
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
