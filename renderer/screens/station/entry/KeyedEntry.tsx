import { type Ref, useEffect, useImperativeHandle, useRef } from "react";
import { useTranslation } from "react-i18next";
import type { LengthUnit, TestCode } from "../../../../electron/domain/protocols/protocol.ts";
import { useKeys } from "../../../app/keys.ts";
import { useSay } from "../../../app/say.ts";
import { Button } from "../../../parts/Button.tsx";
import { NumberField } from "../../../parts/NumberField.tsx";
import { LengthsChoice } from "../LengthsChoice.tsx";
import type { AttemptView, Person } from "../types.ts";
import { AthleteCard } from "./AthleteCard.tsx";
import css from "./KeyedEntry.module.css";
import { Result } from "./Result.tsx";
import { roomFor } from "./room.ts";
import { SendTrouble } from "./SendTrouble.tsx";
import { Blocked, Full } from "./Stopped.tsx";
import { useKeyedEntry } from "./useKeyedEntry.ts";
import { ValueFields, type ValueFieldsHandle } from "./ValueFields.tsx";

export interface KeyedEntryHandle {
  /** Takes an athlete up, as if the bib had been typed. */
  readonly pick: (bib: number) => void;
  /** Reads the athlete again after something about them changed. */
  readonly again: () => void;
}

interface KeyedEntryProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
  readonly onCorrect: (attempt: AttemptView) => void;
  readonly onSkip: (who: Person, test: TestCode) => void;
  readonly ref: Ref<KeyedEntryHandle>;
}

/** A bib, Enter, the values, Enter: the whole of a station that keys from paper or by eye. */
export function KeyedEntry(props: KeyedEntryProps) {
  const { test, parameters, lengths, setLengths, onCorrect, onSkip, ref } = props;
  const { t } = useTranslation("station");
  const say = useSay();
  const entry = useKeyedEntry(test, lengths);
  const { found, values, sending } = entry;
  const bibInput = useRef<HTMLInputElement>(null);
  const fields = useRef<ValueFieldsHandle>(null);
  const room = found === null ? 0 : roomFor(test, parameters, found, values);
  const free = found !== null && found.blockedBy === null && room > 0;
  const foundId = free ? found.who.athleteId : null;
  useKeys({
    ...(test === "vertical" && { "Alt+U": () => setLengths(lengths === "cm" ? "in" : "cm") }),
  });

  function toBib(): void {
    bibInput.current?.focus();
    bibInput.current?.select();
  }

  async function find(bib?: string): Promise<void> {
    await entry.find(bib);
    toBib();
  }

  // Once an athlete is there and may be tested, the values are next.
  useEffect(() => {
    if (foundId !== null) fields.current?.focusFirst();
  }, [foundId]);

  async function save(sure: boolean): Promise<void> {
    const outcome = await entry.save(sure);
    if (outcome === "saved") toBib();
  }

  const firstError = Object.keys(entry.errors)[0];
  useEffect(() => {
    if (firstError !== undefined) fields.current?.focusField(firstError);
  }, [firstError]);

  useImperativeHandle(ref, () => ({
    pick: (bib) => void find(String(bib)),
    again: () => void (found === null ? toBib() : find(String(found.who.bib ?? ""))),
  }));

  return (
    <section
      className={css.entry}
      aria-label={t("entry.title")}
      data-test={test}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || found === null) return;
        event.preventDefault();
        entry.leave();
        toBib();
      }}
    >
      <div className={css.top}>
        <div className={css.bib}>
          <NumberField
            label={t("entry.bib")}
            size="huge"
            value={entry.bib}
            onChange={(typed) => {
              if (found !== null) entry.leave();
              entry.setBib(typed);
            }}
            onEnter={() => void find()}
            error={entry.bibError === null ? null : say(entry.bibError)}
            inputRef={bibInput}
            maxLength={6}
            autoFocus
          />
        </div>
        {found === null && (
          <Button size="large" hint="Enter" onPress={() => void find()}>
            {t("entry.find")}
          </Button>
        )}
        {found !== null && (
          <AthleteCard test={test} found={found} variant={values.variant ?? ""} lengths={lengths} />
        )}
      </div>
      {found?.blockedBy != null && (
        <Blocked
          before={found.blockedBy}
          onSkip={() => found.blockedBy !== null && onSkip(found.who, found.blockedBy)}
        />
      )}
      {found !== null && found.blockedBy === null && room <= 0 && (
        <Full test={test} found={found} lengths={lengths} onCorrect={onCorrect} />
      )}
      {free && (
        <>
          {test === "vertical" && <LengthsChoice lengths={lengths} setLengths={setLengths} />}
          <ValueFields
            ref={fields}
            {...{ test, values, lengths, room }}
            setValue={entry.setValue}
            errors={entry.errors}
            onEnd={() => void save(false)}
          />
          <SendTrouble
            sending={sending}
            onSend={(sure) => void save(sure)}
            onNo={() => {
              entry.unask();
              fields.current?.focusLast();
            }}
          />
          {sending.state !== "asked" && (
            <div className={css.actions}>
              <Button
                kind="primary"
                size="large"
                hint="Enter"
                busy={sending.state === "busy"}
                onPress={() => void save(false)}
              >
                {t("entry.save")}
              </Button>
              <Button
                size="large"
                hint="Esc"
                onPress={() => {
                  entry.leave();
                  toBib();
                }}
              >
                {t("entry.other")}
              </Button>
            </div>
          )}
        </>
      )}
      {entry.saved !== null && found === null && (
        <Result test={test} parameters={parameters} saved={entry.saved} lengths={lengths} />
      )}
    </section>
  );
}
