import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { measuresLengths } from "../../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useKeys } from "../../../app/keys.ts";
import { useStanding } from "../../../app/standing.tsx";
import { Button } from "../../../parts/controls/Button.tsx";
import { LengthsChoice } from "../../../tests/LengthsChoice.tsx";
import { AheadNote } from "./AheadNote.tsx";
import { EntryKeys } from "./EntryKeys.tsx";
import css from "./KeyedEntry.module.css";
import { SendTrouble } from "./SendTrouble.tsx";
import { isOfBib, useHeldKeys } from "./useHeldKeys.ts";
import type { KeyedEntry } from "./useKeyedEntry.ts";
import { isAsking } from "./useSend.ts";
import { ValueFields, type ValueFieldsHandle } from "./ValueFields.tsx";

interface ValueEntryProps {
  readonly test: TestCode;
  readonly entry: KeyedEntry;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
  readonly room: number;
  /** `next`: the bib that was typed ahead, with Enter; null for none. */
  readonly onSaved: (next: string | null) => void;
  readonly onLeave: () => void;
  readonly onSkip: () => void;
}

/** Enters the values of an athlete who may be tested: the first field has the focus, Enter on the last saves. */
export function ValueEntry(props: ValueEntryProps) {
  const { test, entry, lengths, setLengths, room, onSaved, onLeave, onSkip } = props;
  const { t } = useTranslation("station");
  const fields = useRef<ValueFieldsHandle>(null);
  const place = useRef<HTMLDivElement>(null);
  const { sending, box } = entry;
  // The next athlete's bib, typed before the answer is there, must not end up in this one's fields.
  useHeldKeys(
    place,
    sending.state === "busy" ? (key) => (isOfBib(key) ? () => box.type(key) : undefined) : null,
  );
  const isOrganiser = useStanding().post.role === "organiser";
  useKeys(isOrganiser ? { "Alt+S": onSkip } : {});
  useEffect(() => fields.current?.focusFirst(), []);

  async function save(sure: boolean, written: Typed = {}): Promise<void> {
    const outcome = await entry.save(sure, written);
    if (outcome === "open") return;
    if ("field" in outcome) fields.current?.focusField(outcome.field);
    else onSaved(outcome.next);
  }
  const isAsked = isAsking(sending);

  return (
    <div className={css.values} ref={place}>
      <SendTrouble
        sending={sending}
        box={box}
        {...(entry.found !== null && { who: entry.found.who })}
        onSend={(sure) => void save(sure)}
        onWrite={(field, text) => void save(false, { [field]: text })}
        onNo={() => {
          entry.decline();
          fields.current?.focusDoubted();
        }}
      />
      {measuresLengths(test) && !isAsked && <LengthsChoice lengths={lengths} setLengths={setLengths} />}
      <ValueFields
        ref={fields}
        {...{ test, lengths, room }}
        values={entry.values}
        setValue={entry.setValue}
        errors={entry.errors}
        onEnd={() => void save(false)}
      />
      {!isAsked && <AheadNote ahead={box.ahead} />}
      {!isAsked && (
        <EntryKeys
          save={t("entry.save")}
          busy={sending.state === "busy"}
          onSave={() => void save(false)}
          onLeave={onLeave}
        >
          {isOrganiser && (
            <Button hint="Alt+S" onPress={onSkip}>
              {t("entry.skip")}
            </Button>
          )}
        </EntryKeys>
      )}
      {!isAsked && !isOrganiser && <p className="small quiet">{t("entry.skipAsk")}</p>}
    </div>
  );
}
