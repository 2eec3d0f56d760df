import { memo, useId } from "react";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { mayOpen, useStanding } from "../../app/standing.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { KeyHint } from "../../parts/controls/KeyHint.tsx";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Cautions } from "../../parts/layout/Cautions.tsx";
import { faceOf, readParameters } from "../../tests/registry.ts";
import css from "./Rules.module.css";

const parts = ["setUp", "run", "counts", "score", "stop"] as const;

interface RulesProps {
  readonly test: TestCode;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly folded: boolean;
  readonly onFold: () => void;
}

/** Shows the rules of the test beside the entry, in our words and with the day's numbers; they stay while results come. */
export const Rules = memo(RulesPanel);

function RulesPanel({ test, parameters, folded, onFold }: RulesProps) {
  const { t } = useTranslation("station");
  const id = useId();
  return (
    <Stack as="section" gap={3} top className={`small ${css.rules}`} aria-labelledby={id} data-test={test}>
      <h2 id={id} className={css.title}>
        <button
          type="button"
          className={css.fold}
          aria-expanded={!folded}
          aria-keyshortcuts="Alt+R"
          onClick={onFold}
        >
          <span>
            <span className={css.sign} aria-hidden="true">
              {folded ? "+" : "−"}
            </span>
            {t("rules.title")}
          </span>
          <KeyHint keys="Alt+R" />
        </button>
      </h2>
      {folded ? <Cautions size="short" /> : <Parts test={test} parameters={parameters} />}
      <Paper test={test} />
    </Stack>
  );
}

/** Shows the same rules over a live station, which needs the room. */
export function RulesInFull({ test, parameters }: Pick<RulesProps, "test" | "parameters">) {
  return (
    <Stack gap={3} data-test={test}>
      <Parts test={test} parameters={parameters} />
      <Paper test={test} />
    </Stack>
  );
}

function Paper({ test }: Pick<RulesProps, "test">) {
  const { t } = useTranslation(["instructions", "papers"]);
  const { post } = useStanding();
  if (!mayOpen(post, "/instructions")) return null;
  return (
    <Row gap={4} lines={2} wrap>
      <Link className={`strong ${css.paper}`} href={`/instructions/${test}`}>
        {t("link")}
      </Link>
      <Link className={`strong ${css.paper}`} href={`/papers/${test}`}>
        {t("papers:link")}
      </Link>
    </Row>
  );
}

function Parts({ test, parameters }: Pick<RulesProps, "test" | "parameters">) {
  const { t } = useTranslation("station");
  const testWord = useTestWords();
  const { Steps, numbers } = faceOf(test);
  const rules = readParameters(test, parameters);
  const values = numbers(rules);
  return (
    <>
      {parts.map((part) => (
        <div key={part} className={css.part}>
          <h3>{t(`rules.head.${part}`)}</h3>
          <p>{testWord(test, `rules.${part}`, values)}</p>
          {part === "run" && Steps !== undefined && <Steps parameters={rules} />}
        </div>
      ))}
      <Cautions size="full" />
    </>
  );
}
