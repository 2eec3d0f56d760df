import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { measuresLengths } from "../../../../electron/domain/keyed/keyed.ts";
import type { Typed } from "../../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { LengthsChoice } from "../../../tests/LengthsChoice.tsx";
import { faceOf, useTexts } from "../../../tests/registry.ts";
import { useLengthUnit } from "../../../words/lengths.ts";
import { EntryKeys } from "../entry/EntryKeys.tsx";
import { SendTrouble } from "../entry/SendTrouble.tsx";
import { isAsking } from "../entry/useSend.ts";
import { ValueFields, type ValueFieldsHandle } from "../entry/ValueFields.tsx";
import type { StationPerson } from "../types.ts";
import type { StudyToRead } from "./types.ts";
import { type Read, useReading } from "./useReading.ts";

interface EnterSeenProps {
  readonly test: TestCode;
  readonly study: StudyToRead;
  readonly position: number;
  /** The day's frozen ones. */
  readonly parameters: unknown;
  readonly who: StationPerson;
  readonly onDone: (read: Read) => void;
  readonly onLeave: () => void;
}

/** Enters what a second judge saw of one athlete, in the fields of the station; Enter on the last saves. */
export function EnterSeen(props: EnterSeenProps) {
  const { test, who, onDone, onLeave } = props;
  const { t } = useTranslation(["secondJudge", "station"]);
  const textsOf = useTexts();
  const { lengths, setLengths } = useLengthUnit();
  const fields = useRef<ValueFieldsHandle>(null);
  const reading = useReading({ ...props, lengths });
  const { sending, seen } = reading;
  const isAsked = isAsking(sending);
  // biome-ignore lint/correctness/useExhaustiveDependencies: at first, and for the other direction
  useEffect(() => fields.current?.focusFirst(), [seen.length]);

  async function save(sure: boolean, written: Typed = {}): Promise<void> {
    const came = await reading.save(sure, written);
    if (came === null) return;
    if ("field" in came) fields.current?.focusField(came.field);
    else onDone(came);
  }
  const begun = faceOf(test).begun?.(textsOf(test), [...seen]) ?? null;
  return (
    <Stack
      as="section"
      gap={4}
      align="start"
      data-test={test}
      aria-label={t("at.pick", { bib: who.bib, name: who.name })}
      onKeyDown={({ key }) => key === "Escape" && !isAsked && onLeave()}
    >
      <h2>{t("at.pick", { bib: who.bib, name: who.name })}</h2>
      {begun !== null && (
        <p className="strong">
          {begun} {t("half")}
        </p>
      )}
      <SendTrouble
        sending={sending}
        onSend={(sure) => void save(sure)}
        onWrite={(field, text) => void save(false, { [field]: text })}
        onNo={() => {
          reading.decline();
          fields.current?.focusDoubted();
        }}
      />
      {measuresLengths(test) && !isAsked && <LengthsChoice lengths={lengths} setLengths={setLengths} />}
      <ValueFields
        ref={fields}
        {...{ test, lengths }}
        room={reading.room}
        values={reading.values}
        setValue={reading.setValue}
        errors={reading.errors}
        wayIsGiven
        onEnd={() => void save(false)}
      />
      {!isAsked && (
        <EntryKeys
          save={t("save")}
          busy={sending.state === "busy"}
          onSave={() => void save(false)}
          onLeave={onLeave}
        />
      )}
    </Stack>
  );
}
