import { useState } from "react";
import { useTranslation } from "react-i18next";
import { readKeyed, retype } from "../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../electron/domain/tests/reading.ts";
import type { Sentence } from "../../../electron/domain/words.ts";
import { useTRPCClient } from "../../app/client.tsx";
import { sentenceOf } from "../../app/trouble.ts";
import { showNumbers } from "../../words/numbers.ts";
import { type Sending, useSend } from "./entry/useSend.ts";
import type { AttemptView } from "./types.ts";

export interface Correction {
  readonly values: Typed;
  readonly setValue: (name: string, typed: string) => void;
  readonly errors: Readonly<Record<string, Sentence>>;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
  readonly bib: string;
  readonly setBib: (typed: string) => void;
  readonly bibError: Sentence | null;
  readonly reason: string;
  readonly setReason: (typed: string) => void;
  readonly reasonMissing: boolean;
  readonly missReason: () => void;
  readonly sending: Sending;
  readonly unask: () => void;
  /** Reads the fields and sends them; names what can't be read. */
  readonly save: (sure: boolean) => Promise<"saved" | "open" | { readonly field: string } | "reason">;
}

/** Holds the state of one correction, starting with the entered values. `parameters`: the day's frozen ones. */
export function useCorrection(attempt: AttemptView, parameters: unknown, preferred: LengthUnit): Correction {
  const client = useTRPCClient();
  const { language } = useTranslation().i18n;
  const { sending, send, reset } = useSend();
  const [start] = useState(() => retype(attempt.test, attempt.seen, preferred));
  const [values, setValues] = useState<Typed>({
    variant: attempt.variant,
    ...showNumbers(start.typed, language),
  });
  const [lengths, setLengths] = useState(start.lengths);
  const [errors, setErrors] = useState<Readonly<Record<string, Sentence>>>({});
  const [bib, setBib] = useState(String(attempt.who.bib ?? ""));
  const [bibError, setBibError] = useState<Sentence | null>(null);
  const [reason, setReason] = useState("");
  const [reasonMissing, setReasonMissing] = useState(false);
  // Kept through all tries: a retry can't enter anything twice.
  const [ticket] = useState(() => crypto.randomUUID());

  /** Returns the attempt's athlete: the same one, or the one whose bib should have been typed. */
  async function athleteOf(): Promise<number | null> {
    if (bib.trim() === String(attempt.who.bib ?? "")) return attempt.who.athleteId;
    try {
      const found = await client.station.find.query({ test: attempt.test, bib, lengths });
      return found.who.athleteId;
    } catch (error) {
      setBibError(sentenceOf(error));
      return null;
    }
  }

  async function save(sure: boolean): ReturnType<Correction["save"]> {
    const keyed = readKeyed(attempt.test, parameters, values, lengths);
    setErrors("errors" in keyed ? keyed.errors : {});
    setReasonMissing(reason.trim() === "");
    if ("errors" in keyed) return { field: Object.keys(keyed.errors)[0] ?? "" };
    if (reason.trim() === "") return "reason";
    const athleteId = await athleteOf();
    if (athleteId === null) return "open";
    const answer = await send({
      ...{ athleteId, test: attempt.test, variant: values.variant ?? "", sure, lengths },
      attempts: keyed.seen.map((seen) => ({ id: ticket, seen })),
      note: attempt.note,
      replaces: { attemptId: attempt.attemptId, reason },
    });
    return answer === undefined ? "open" : "saved";
  }

  return {
    values,
    setValue: (name, typed) => setValues((before) => ({ ...before, [name]: typed })),
    errors,
    lengths,
    setLengths,
    bib,
    setBib(typed) {
      setBib(typed);
      setBibError(null);
    },
    bibError,
    reason,
    setReason(typed) {
      setReason(typed);
      setReasonMissing(false);
    },
    reasonMissing,
    missReason: () => setReasonMissing(true),
    sending,
    unask: reset,
    save,
  };
}
