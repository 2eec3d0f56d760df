import { useState } from "react";
import { useTranslation } from "react-i18next";
import { readKeyed, retype } from "../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../electron/domain/tests/reading.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import type { CorrectionDraft } from "../../app/kept-drafts.ts";
import { isDevice } from "../../app/table.ts";
import { sentenceOf } from "../../app/trouble.ts";
import { showNumbers } from "../../words/numbers.ts";
import type { Corrections } from "./drafts.ts";
import { type Sending, useSend } from "./entry/useSend.ts";
import { mendedBy } from "./mended.ts";
import type { AttemptView } from "./types.ts";

export interface Correction {
  readonly draft: CorrectionDraft;
  readonly change: (part: Partial<CorrectionDraft>) => void;
  readonly setValue: (name: string, typed: string) => void;
  /** True if anything differs from what was entered. */
  readonly isChanged: boolean;
  readonly errors: Readonly<Record<string, Sentence>>;
  readonly bibError: Sentence | null;
  readonly reasonMissing: boolean;
  readonly missReason: () => void;
  readonly sending: Sending;
  readonly decline: () => void;
  /** Reads the fields and sends them; names what can't be read. `written`: fields that are written anew for it. */
  readonly save: (
    sure: boolean,
    written?: Typed,
  ) => Promise<"saved" | "open" | { readonly field: string } | "reason">;
}

/** Holds the state of the open correction, starting with the entered values. `parameters`: the day's frozen ones. */
export function useCorrection(
  attempt: AttemptView,
  parameters: unknown,
  preferred: LengthUnit,
  { open, keep }: Pick<Corrections, "open" | "keep">,
): Correction {
  const client = useTRPCClient();
  const { language } = useTranslation().i18n;
  const { sending, send, askEither, decline, change: changeSending } = useSend();
  const [start] = useState((): CorrectionDraft => {
    const { typed, lengths } = retype(attempt.test, attempt.seen, preferred);
    const values = { variant: attempt.variant, ...showNumbers(typed, language) };
    return { values, lengths, bib: String(attempt.who.bib ?? ""), reason: "" };
  });
  const draft = open?.draft ?? start;
  const [errors, setErrors] = useState<Readonly<Record<string, Sentence>>>({});
  const [bibError, setBibError] = useState<Sentence | null>(null);
  const [reasonMissing, setReasonMissing] = useState(false);
  // Kept through all tries: a retry can't enter anything twice.
  const [ticket] = useState(() => crypto.randomUUID());

  function change(part: Partial<CorrectionDraft>): void {
    keep({ ...draft, ...part });
    changeSending();
    if (part.bib !== undefined) setBibError(null);
    if (part.reason !== undefined) setReasonMissing(false);
  }

  /** Returns the attempt's athlete: the same one, or the one whose bib should have been typed. */
  async function athleteOf(): Promise<number | null> {
    const { bib, lengths } = draft;
    if (bib.trim() === String(attempt.who.bib ?? "")) return attempt.who.athleteId;
    try {
      const found = await client.station.find.query({ test: attempt.test, bib, lengths });
      return found.who.athleteId;
    } catch (error) {
      setBibError(sentenceOf(error));
      return null;
    }
  }

  async function save(sure: boolean, written: Typed = {}): ReturnType<Correction["save"]> {
    const values = { ...draft.values, ...written };
    const { reason, lengths } = draft;
    if (Object.keys(written).length > 0) keep({ ...draft, values });
    const keyed = readKeyed(attempt.test, parameters, values, lengths);
    setErrors("errors" in keyed ? keyed.errors : {});
    if ("errors" in keyed) return { field: Object.keys(keyed.errors)[0] ?? "" };
    if (reason.trim() === "") {
      setReasonMissing(true);
      return "reason";
    }
    if ("either" in keyed) {
      askEither(keyed.either);
      return "open";
    }
    const athleteId = await athleteOf();
    if (athleteId === null) return "open";
    const answer = await send(
      {
        ...{ athleteId, test: attempt.test, variant: values.variant ?? "", sure, lengths },
        attempts: keyed.seen.map((seen) => ({ id: ticket, seen })),
        note: attempt.note,
        replaces: { attemptId: attempt.attemptId, reason },
      },
      Number(draft.bib),
      isDevice ? await mendedBy(attempt) : undefined,
    );
    return answer === undefined ? "open" : "saved";
  }

  return {
    draft,
    change,
    setValue: (name, typed) => change({ values: { ...draft.values, [name]: typed } }),
    isChanged: JSON.stringify(draft) !== JSON.stringify(start),
    errors,
    bibError,
    reasonMissing,
    missReason: () => setReasonMissing(true),
    sending,
    decline,
    save,
  };
}
