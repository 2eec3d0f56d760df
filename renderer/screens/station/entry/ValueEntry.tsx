import { useEffect, useRef } from "react";
import { useTranslation } from "react-i18next";
import { measuresLengths } from "../../../../electron/domain/keyed/keyed.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import { useStanding } from "../../../app/standing.tsx";
import { Button } from "../../../parts/controls/Button.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import { LengthsChoice } from "../../../tests/LengthsChoice.tsx";
import { useStationKeys } from "../../../tests/stationKeys.ts";
import { SendTrouble } from "./SendTrouble.tsx";
import type { KeyedEntry } from "./useKeyedEntry.ts";
import { ValueFields, type ValueFieldsHandle } from "./ValueFields.tsx";

interface ValueEntryProps {
  readonly test: TestCode;
  readonly entry: KeyedEntry;
  readonly lengths: LengthUnit;
  readonly setLengths: (lengths: LengthUnit) => void;
  readonly room: number;
  readonly onSaved: () => void;
  readonly onLeave: () => void;
  readonly onSkip: () => void;
}

/** Enters the values of an athlete who may be tested: the first field has the focus, Enter on the last saves. */
export function ValueEntry(props: ValueEntryProps) {
  const { test, entry, lengths, setLengths, room, onSaved, onLeave, onSkip } = props;
  const { t } = useTranslation("station");
  const fields = useRef<ValueFieldsHandle>(null);
  const { sending } = entry;
  const isOrganiser = useStanding().post.role === "organiser";
  useStationKeys(isOrganiser ? { "Alt+S": onSkip } : {});
  useEffect(() => fields.current?.focusFirst(), []);

  async function save(sure: boolean): Promise<void> {
    const outcome = await entry.save(sure);
    if (outcome === "saved") onSaved();
    else if (outcome !== "open") fields.current?.focusField(outcome.field);
  }

  return (
    <>
      {measuresLengths(test) && <LengthsChoice lengths={lengths} setLengths={setLengths} />}
      <ValueFields
        ref={fields}
        {...{ test, lengths, room }}
        values={entry.values}
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
        <Row gap={3} wrap>
          <Button
            kind="primary"
            hint="Enter"
            busy={sending.state === "busy"}
            onPress={() => void save(false)}
          >
            {t("entry.save")}
          </Button>
          <Button hint="Esc" onPress={onLeave}>
            {t("entry.other")}
          </Button>
          {isOrganiser && (
            <Button hint="Alt+S" onPress={onSkip}>
              {t("entry.skip")}
            </Button>
          )}
        </Row>
      )}
    </>
  );
}
