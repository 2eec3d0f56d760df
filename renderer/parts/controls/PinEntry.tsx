import { type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import { Form } from "../flow/Form.tsx";
import { Row, Stack } from "../flow/Stack.tsx";
import { Button } from "./Button.tsx";
import { BackSign, PadKey } from "./PadKey.tsx";
import css from "./PinEntry.module.css";
import { PinWait } from "./PinWait.tsx";
import { TextField } from "./TextField.tsx";

interface PinField {
  readonly key: string;
  readonly label: string;
  readonly help?: string;
  /** The error in this field, and what to do. */
  readonly error?: string | null;
}

interface PinEntryProps {
  readonly fields: readonly PinField[];
  readonly submit: string;
  /** Called with the typed text, by the fields' keys. */
  readonly onSubmit: (typed: Readonly<Record<string, string>>) => void;
  readonly busy: boolean;
  /** Seconds for which nothing can be sent, after wrong PINs. */
  readonly seconds: number;
  /** A second action, beside the button. */
  readonly beside?: ReactNode;
}

/**
 * Entry of PINs: by keyboard, or by touch on its own keys, since the system's touch keyboard may not appear in full
 * screen. The keys write into the last used field and leave the focus where it is.
 */
export function PinEntry(props: PinEntryProps) {
  const { fields, submit, onSubmit, busy, seconds, beside } = props;
  const [typed, setTyped] = useState<Readonly<Record<string, string>>>({});
  const [active, setActive] = useState(fields[0]?.key ?? "");
  const write = (key: string, text: string) => setTyped((before) => ({ ...before, [key]: text }));
  const current = typed[active] ?? "";

  return (
    <Form
      className={css.entry}
      onSubmit={() => {
        if (!busy && seconds === 0)
          onSubmit(Object.fromEntries(fields.map(({ key }) => [key, typed[key] ?? ""])));
      }}
    >
      <Stack gap={4}>
        {fields.map(({ key, label, help, error = null }, index) => (
          <TextField
            key={key}
            label={label}
            {...(help !== undefined && { help })}
            type="password"
            inputMode="numeric"
            value={typed[key] ?? ""}
            onChange={(text) => write(key, text)}
            onFocus={() => setActive(key)}
            error={error}
            autoFocus={index === 0}
            maxLength={64}
          />
        ))}
        <PinWait seconds={seconds} />
        <Row gap={3} align="center" wrap>
          {beside}
          <Button kind="primary" size="large" type="submit" busy={busy} disabled={seconds > 0}>
            {submit}
          </Button>
        </Row>
      </Stack>
      <Pad
        onDigit={(digit) => write(active, `${current}${digit}`)}
        onBack={() => write(active, current.slice(0, -1))}
      />
    </Form>
  );
}

interface PadProps {
  readonly onDigit: (digit: number) => void;
  readonly onBack: () => void;
}

function Pad({ onDigit, onBack }: PadProps) {
  const { t } = useTranslation("lock");
  return (
    <fieldset className={css.pad} onPointerDown={(event) => event.preventDefault()}>
      <legend className="unseen">{t("pad.title")}</legend>
      {[1, 2, 3, 4, 5, 6, 7, 8, 9, 0].map((digit) => (
        <PadKey key={digit} sign={`${digit}`} onPress={() => onDigit(digit)}>
          {digit}
        </PadKey>
      ))}
      <PadKey label={t("pad.back")} onPress={onBack}>
        <BackSign />
      </PadKey>
    </fieldset>
  );
}
