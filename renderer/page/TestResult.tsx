import { useTranslation } from "react-i18next";
import { choiceOf } from "../../electron/domain/keyed/keyed.ts";
import type { Looking } from "../../electron/domain/reference-table/look-up.ts";
import type { PageData } from "../../electron/domain/reference-table/page-data.ts";
import type { LengthUnit } from "../../electron/domain/tests/protocol.ts";
import { protocolOf } from "../../electron/domain/tests/registry.ts";
import { useTestWords } from "../app/testWords.ts";
import { Choice } from "../parts/controls/Choice.tsx";
import { NumberField } from "../parts/controls/NumberField.tsx";
import { Stack } from "../parts/flow/Stack.tsx";
import { TestMark } from "../parts/marks/TestMark.tsx";
import { faceOf, readParameters, useTexts } from "../tests/registry.ts";
import { useSay } from "../words/say.ts";
import { Came } from "./Came.tsx";
import css from "./Page.module.css";
import { TestFields } from "./TestFields.tsx";
import type { LookedUpTest } from "./useLooking.ts";

interface TestResultProps {
  readonly looked: LookedUpTest;
  readonly data: PageData;
  readonly who: Looking;
  readonly lengths: LengthUnit;
}

/** One test: what was done, and beside it what that comes to. */
export function TestResult({ looked, data, who, lengths }: TestResultProps) {
  const { test, parameters } = looked;
  const testWord = useTestWords();
  const textsOf = useTexts();
  return (
    <li className={css.test} data-test={test}>
      <h3 className={css.name}>
        <TestMark test={test} size="medium" name="station" />
      </h3>
      <p className="measure">{faceOf(test).asks(textsOf(test), readParameters(test, parameters))}</p>
      <div className={css.columns}>
        <fieldset className={css.typed}>
          <legend className="unseen">{testWord(test, "name")}</legend>
          <Way looked={looked} />
          {looked.groups.map((group) => (
            <TestFields key={group.name} looked={looked} group={group} lengths={lengths} />
          ))}
          <Earlier looked={looked} lengths={lengths} />
        </fieldset>
        {/* A screen reader hears what came of it when the typing pauses. */}
        <Stack as="output" gap={4} top className={css.came}>
          <Came looked={looked} data={data} who={who} lengths={lengths} />
        </Stack>
      </div>
    </li>
  );
}

/** How it was done, where that is one choice for the whole test. */
function Way({ looked: { test, groups, chosen, choose } }: Pick<TestResultProps, "looked">) {
  const testWord = useTestWords();
  const choice = choiceOf(test);
  if (choice === null || groups.length > 1) return null;
  const { name, options } = choice;
  return (
    <Choice
      label={testWord(test, `choice.${name}.label`)}
      hideLabel
      options={options.map((value) => ({ value, label: testWord(test, `choice.${name}.${value}`) }))}
      value={options.find((option) => option === chosen[name]) ?? null}
      onChange={(option) => choose(name, option)}
    />
  );
}

/** The result of last time as one number, as it stands on a card. */
function Earlier({ looked, lengths }: Pick<TestResultProps, "looked" | "lengths">) {
  const { t } = useTranslation(["page", "common"]);
  const say = useSay();
  const { test, earlier, earlierText, writeEarlier } = looked;
  const { grain, variants } = protocolOf(test);
  const { unit } = grain;
  const error = earlier !== null && "error" in earlier ? say(earlier.error) : null;
  return (
    <NumberField
      label={t("results.earlier")}
      help={t(variants.length > 1 ? "results.earlierVariant" : "results.earlierHelp")}
      digits={unit === "s" ? "time" : unit === "reps" ? "whole" : "fraction"}
      value={earlierText}
      onChange={writeEarlier}
      unit={unit === "s" ? t("results.minutes") : t(`common:unit.${unit === "cm" ? lengths : unit}`)}
      error={error}
    />
  );
}
