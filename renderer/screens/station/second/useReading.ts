import { useState } from "react";
import { useTranslation } from "react-i18next";
import { readKeyed, roomFor, startOf } from "../../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../../electron/domain/tests/reading.ts";
import { protocolOf, type TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { keepAndSend } from "../../../app/kept-entries.ts";
import { showNumbers } from "../../../words/numbers.ts";
import { useSender } from "../entry/useSend.ts";
import type { StationPerson } from "../types.ts";
import type { StudyToRead } from "./types.ts";

interface ReadingOf {
  readonly test: TestCode;
  readonly study: StudyToRead;
  readonly position: number;
  readonly parameters: unknown;
  readonly who: StationPerson;
  readonly lengths: LengthUnit;
}

/** A reading that is at the table, or waits on this device. */
export interface Read {
  readonly who: StationPerson;
  readonly seen: readonly unknown[];
  readonly waits: boolean;
}

/** Holds what is typed of one athlete, and sends it once it makes a whole result: a jump's first direction waits for the other. */
export function useReading({ test, study, position, parameters, who, lengths }: ReadingOf) {
  const { language } = useTranslation().i18n;
  const { studyId, variant } = study;
  const [typed, setTyped] = useState<Typed>({});
  const [seen, setSeen] = useState<readonly unknown[]>([]);
  const [errors, setErrors] = useState<Readonly<Record<string, Sentence>>>({});
  // One id for all tries, so that a retry enters nothing twice.
  const [id] = useState(() => crypto.randomUUID());
  const { sending, send, askEither, decline, change } = useSender(
    (by: string, all: readonly unknown[], sure: boolean) => {
      const which = { id, studyId, position, athleteId: who.athleteId };
      const input = { ...which, seen: [...all], by, lengths, sure };
      return keepAndSend({ what: "read", id, bib: who.bib, test, input });
    },
  );
  const values = { ...showNumbers(startOf(test, { seen, variant }, lengths), language), ...typed };
  const standing = seen.map((each) => ({ variant, seen: each }));

  /** Reads the fields; names one that can't be read, or sends the whole. Null while something is still to come. */
  async function save(sure: boolean, written: Typed): Promise<Read | { readonly field: string } | null> {
    setTyped((before) => ({ ...before, ...written }));
    const keyed = readKeyed(test, parameters, { ...values, ...written, variant }, lengths);
    setErrors("errors" in keyed ? keyed.errors : {});
    if ("errors" in keyed) return { field: Object.keys(keyed.errors)[0] ?? "" };
    if ("either" in keyed) {
      askEither(keyed.either);
      return null;
    }
    const all = [...seen, ...keyed.seen];
    if (isHalf(test, parameters, all)) {
      setSeen(all);
      setTyped({});
      return null;
    }
    const done = await send(all, sure);
    return done === undefined ? null : { who, seen: all, waits: done.waits };
  }
  return {
    values,
    seen,
    errors,
    sending,
    room: roomFor(test, parameters, standing, values),
    setValue(name: string, text: string): void {
      setTyped((before) => ({ ...before, [name]: text }));
      setErrors(({ [name]: _mended, ...rest }) => rest);
      change();
    },
    save,
    decline,
  };
}

/** True for attempts that more have to follow before they make a result. */
function isHalf(test: TestCode, parameters: unknown, seen: readonly unknown[]): boolean {
  const protocol = protocolOf(test);
  const attempts = seen.map((each) => protocol.attempt.parse(each));
  return protocol.score(parameters, attempts).state === "incomplete";
}
