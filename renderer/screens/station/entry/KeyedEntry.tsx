import { memo, type Ref, useEffect, useImperativeHandle, useRef } from "react";
import { useTranslation } from "react-i18next";
import { roomFor } from "../../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useKeys } from "../../../app/keys.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Check } from "../../../parts/controls/Check.tsx";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { useWriteSeen } from "../../../tests/seen.ts";
import { useWriteTime } from "../../../words/dates.ts";
import { useSay } from "../../../words/say.ts";
import type { AttemptView, Found, StationPerson } from "../types.ts";
import { AthleteMarks, AthleteName } from "./AthleteCard.tsx";
import css from "./KeyedEntry.module.css";
import noticeCss from "./Notice.module.css";
import { Result } from "./Result.tsx";
import { useKeyedEntry } from "./useKeyedEntry.ts";
import { isAsking } from "./useSend.ts";
import { ValueEntry } from "./ValueEntry.tsx";

export interface KeyedEntryHandle {
  /** Opens an athlete as if the bib had been typed. */
  readonly pick: (bib: number) => void;
  /** Reads the athlete again after a change. */
  readonly again: () => void;
}

interface KeyedEntryProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
  readonly onCorrect: (attempt: AttemptView) => void;
  readonly onSkip: (who: StationPerson, test: TestCode) => void;
  readonly ref: Ref<KeyedEntryHandle>;
}

/** Enters results by keyboard, from paper or by eye: a bib, Enter, the values, Enter. Others' results are nothing to it. */
export const KeyedEntry = memo(EntryForm);

function EntryForm(props: KeyedEntryProps) {
  const { test, parameters, lengths, setLengths, onCorrect, onSkip, ref } = props;
  const { t } = useTranslation("station");
  const say = useSay();
  const entry = useKeyedEntry(test, parameters, lengths);
  const { found, values } = entry;
  const bibInput = useRef<HTMLInputElement>(null);
  const room = found === null ? 0 : roomFor(test, parameters, found.standing, values);

  function toBib(): void {
    bibInput.current?.focus();
    bibInput.current?.select();
  }

  function leave(): void {
    entry.leave();
    toBib();
  }

  // The bib keeps the focus until the desk says that the athlete may be tested; then the values get it.
  async function find(bib?: string): Promise<void> {
    toBib();
    await entry.find(bib);
  }

  // A bib left there before gives way to the next one's digits.
  useEffect(() => bibInput.current?.select(), []);
  useImperativeHandle(ref, () => ({
    pick: (bib) => void find(String(bib)),
    again: () => void (found === null ? toBib() : find(String(found.who.bib ?? ""))),
  }));

  return (
    <section
      className={css.entry}
      aria-label={t("entry.title")}
      data-test={test}
      data-somebody={found !== null}
      onKeyDown={(event) => {
        if (event.key !== "Escape" || found === null) return;
        event.preventDefault();
        leave();
      }}
    >
      <Row gap={4} align="end" wrap>
        <div className={css.bib}>
          <NumberField
            label={t("entry.bib")}
            value={entry.bib}
            onChange={(typed) => {
              if (found !== null) entry.leave();
              entry.setBib(typed);
            }}
            // One Enter too many after a save asks for nothing.
            onEnter={() => entry.bib.trim() !== "" && void find()}
            error={entry.bibError === null ? null : say(entry.bibError)}
            inputRef={bibInput}
            maxLength={6}
            autoFocus
          />
        </div>
        {found === null ? (
          <>
            <Button size="large" hint="Enter" onPress={() => void find()}>
              {t("entry.find")}
            </Button>
            <Check checked={entry.isPaper} onChange={entry.setPaper}>
              {t("entry.paper")}
            </Check>
          </>
        ) : (
          <>
            <div className={css.who}>
              <AthleteName found={found} />
            </div>
            {entry.isPaper && <DoneAt entry={entry} />}
          </>
        )}
      </Row>
      {found !== null && (
        <AthleteMarks test={test} found={found} variant={values.variant ?? ""} lengths={lengths} />
      )}
      {found !== null && found.stillBefore !== null && room > 0 && !isAsking(entry.sending) && (
        <StillBefore before={found.stillBefore} />
      )}
      {found !== null && room <= 0 && (
        <Full test={test} found={found} lengths={lengths} onCorrect={onCorrect} />
      )}
      {found !== null && room > 0 && (
        <ValueEntry
          key={found.who.athleteId}
          {...{ test, entry, lengths, setLengths, room }}
          onSaved={(next) => (next === null ? toBib() : void find(next))}
          onLeave={leave}
          onSkip={() => onSkip(found.who, test)}
        />
      )}
      {entry.saved !== null && found === null && (
        <Result {...{ test, parameters, lengths, onCorrect }} saved={entry.saved} />
      )}
    </section>
  );
}

/** Takes the time of day on the paper, where it has one. */
function DoneAt({
  entry: { doneAt, setDoneAt, errors },
}: {
  readonly entry: ReturnType<typeof useKeyedEntry>;
}) {
  const { t } = useTranslation("station");
  const say = useSay();
  return (
    <TextField
      label={t("entry.doneAt")}
      value={doneAt}
      onChange={setDoneAt}
      maxLength={8}
      error={errors.doneAt === undefined ? null : say(errors.doneAt)}
    />
  );
}

interface FullProps {
  readonly test: TestCode;
  readonly found: Found;
  readonly lengths: LengthUnit;
  readonly onCorrect: (attempt: AttemptView) => void;
}

/** Says that all attempts are entered already: which, and how to correct them. */
function Full({ test, found, lengths, onCorrect }: FullProps) {
  const { t } = useTranslation("station");
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const newest = found.standing.at(-1);
  useKeys({ "Alt+C": () => newest !== undefined && onCorrect(newest) });
  return (
    <div className={noticeCss.notice} data-tone="note" role="status">
      {found.standing.map((attempt) => (
        <p key={attempt.attemptId}>
          {t("athlete.standing", {
            seen: writeSeen(test, attempt.seen, lengths),
            by: attempt.by,
            time: writeTime(attempt.at),
          })}
        </p>
      ))}
      <p>{t("athlete.full")}</p>
      {newest !== undefined && (
        <Row gap={3} wrap>
          <Button hint="Alt+C" onPress={() => onCorrect(newest)}>
            {t("athlete.correct")}
          </Button>
        </Row>
      )}
    </div>
  );
}

/** Says that an earlier test is still to come: results on paper are saved all the same. */
function StillBefore({ before }: { readonly before: TestCode }) {
  const { t } = useTranslation("planning");
  const testWord = useTestWords();
  return (
    <p className="small quiet" role="status">
      {t("keyed.stillBefore", { test: testWord(before, "name") })}
    </p>
  );
}
