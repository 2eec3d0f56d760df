import { type KeyboardEvent, type Ref, useEffect, useImperativeHandle, useRef } from "react";
import { useTranslation } from "react-i18next";
import { choiceOf, fieldsOf } from "../../../../electron/domain/keyed/keyed.ts";
import type { Choosing, Field } from "../../../../electron/domain/tests/fields.ts";
import type { LengthUnit } from "../../../../electron/domain/tests/protocol.ts";
import type { Typed } from "../../../../electron/domain/tests/reading.ts";
import type { TestCode } from "../../../../electron/domain/tests/registry.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useTestWords } from "../../../app/testWords.ts";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { KeyHint } from "../../../parts/controls/KeyHint.tsx";
import { NumberField } from "../../../parts/controls/NumberField.tsx";
import { Row } from "../../../parts/flow/Stack.tsx";
import choiceCss from "../../../tests/Choice.module.css";
import { useSay } from "../../../words/say.ts";
import css from "./ValueFields.module.css";

export interface ValueFieldsHandle {
  /** Focuses the first empty field, or the first of all. */
  readonly focusFirst: () => void;
  readonly focusField: (name: string) => void;
  /** Focuses what a doubt is mostly about: the first count or time, and of lengths the last reading. */
  readonly focusDoubted: () => void;
}

interface ValueFieldsProps {
  readonly test: TestCode;
  readonly values: Typed;
  readonly setValue: (name: string, typed: string) => void;
  readonly errors: Readonly<Record<string, Sentence>>;
  readonly lengths: LengthUnit;
  readonly room: number;
  /** True where it is known in which way the test is done, and nobody chooses it here. */
  readonly wayIsGiven?: boolean;
  /** Called at Enter on the last field; left out where every Enter does the same. */
  readonly onEnd?: () => void;
  /** Called at Enter on any field, instead of going to the next one. */
  readonly onEnter?: () => void;
  readonly ref: Ref<ValueFieldsHandle>;
}

/** Shows the fields of one test: Enter goes from one to the next, and ends on the last. */
export function ValueFields(props: ValueFieldsProps) {
  const { test, values, setValue, errors, lengths, room, onEnd, onEnter, ref } = props;
  const { t } = useTranslation(["station", "common"]);
  const testWord = useTestWords();
  const say = useSay();
  const inputs = useRef(new Map<string, HTMLInputElement>());
  const fields = fieldsOf(test, values, room);
  const chain = fields.filter((field) => field.aside !== true);
  const own = choiceOf(test);
  const choice = props.wayIsGiven === true && own?.name === "variant" ? null : own;
  const measures = fields.some(({ unit }) => unit === "length");

  function focusField(name: string): void {
    const input = inputs.current.get(name);
    input?.focus();
    input?.select();
  }

  useImperativeHandle(ref, () => ({
    focusField,
    focusFirst: () =>
      focusField((chain.find(({ name }) => (values[name] ?? "") === "") ?? chain[0])?.name ?? ""),
    focusDoubted: () => focusField(chain.at(measures ? -1 : 0)?.name ?? ""),
  }));

  // "Not finished" changes the fields while the hands are on the keys.
  const names = fields.map(({ name }) => name).join(" ");
  const shown = useRef(names);
  useEffect(() => {
    if (shown.current !== names && document.activeElement === document.body) {
      inputs.current.get(names.split(" ")[0] ?? "")?.focus();
    }
    shown.current = names;
  }, [names]);

  function goOn(field: Field): void {
    const next = chain[chain.indexOf(field) + 1];
    const mayEnd = field.mayEnd === true && (values[field.name] ?? "").trim() === "";
    if (onEnter !== undefined) onEnter();
    else if (next === undefined || mayEnd) onEnd?.();
    else focusField(next.name);
  }

  /** Chooses by letters, which mean nothing else in these fields. */
  function choose(event: KeyboardEvent): void {
    if (choice === null || event.ctrlKey || event.altKey || event.metaKey) return;
    const key = event.key.toUpperCase();
    const other = choice.options.find((option) => option !== values[choice.name]);
    const chosen =
      choice.keys === null
        ? key === otherKey
          ? other
          : undefined
        : choice.options[choice.keys.indexOf(key)];
    if (chosen === undefined) return;
    event.preventDefault();
    setValue(choice.name, chosen);
  }

  function unitOf({ unit }: Field): { unit?: string } {
    if (unit === "length") return { unit: t(`common:unit.${lengths}`) };
    return unit === "mass" ? { unit: t(`mass.${lengths}`) } : {};
  }

  return (
    <fieldset className={css.values} onKeyDownCapture={choose}>
      {choice !== null && (
        <ChosenWay
          test={test}
          choice={choice}
          value={values[choice.name] ?? ""}
          onChoose={(option) => setValue(choice.name, option)}
        />
      )}
      <Row
        gap={4}
        lines={3}
        align="end"
        wrap
        className={css.fields}
        data-lengths={measures ? lengths : undefined}
      >
        {fields.map((field) => (
          <div
            key={field.name}
            className={css.field}
            data-wide={field.digits === "time"}
            data-aside={field.aside ?? false}
          >
            <NumberField
              label={testWord(test, `field.${field.label ?? field.name}`)}
              digits={field.digits}
              value={values[field.name] ?? ""}
              onChange={(typed) => setValue(field.name, typed)}
              error={errors[field.name] === undefined ? null : say(errors[field.name] as Sentence)}
              onEnter={() => goOn(field)}
              inputRef={(input) => {
                if (input !== null) inputs.current.set(field.name, input);
                else inputs.current.delete(field.name);
              }}
              {...unitOf(field)}
            />
          </div>
        ))}
      </Row>
    </fieldset>
  );
}

/** The key that changes a choice without keys of its own. */
const otherKey = "D";

interface ChosenWayProps {
  readonly test: TestCode;
  readonly choice: Choosing;
  readonly value: string;
  readonly onChoose: (option: string) => void;
}

/** Shows a choice always in sight and never in the way: the variant, the direction, or whether it was finished. */
function ChosenWay({ test, choice, value, onChoose }: ChosenWayProps) {
  const { t } = useTranslation("station");
  const testWord = useTestWords();
  const { name, keys } = choice;
  const options = choice.options.map((option, index) => ({
    value: option,
    label: (
      <>
        {testWord(test, `choice.${name}.${option}`)}
        {keys !== null && <KeyHint keys={keys[index] ?? ""} />}
      </>
    ),
  }));
  return (
    <Row gap={3} align="end" wrap className={choiceCss.choice}>
      <Choice
        label={testWord(test, `choice.${name}.label`)}
        hideLabel
        options={options}
        value={options.find((option) => option.value === value)?.value ?? null}
        onChange={onChoose}
      />
      {keys === null && <KeyHint keys={otherKey} does={t("choice.changes")} />}
    </Row>
  );
}
