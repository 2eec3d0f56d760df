import { type ReactNode, useId } from "react";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { protocols } from "../../../electron/domain/tests/registry.ts";
import { formatTime } from "../../../electron/domain/units.ts";
import { mayGo, useStanding } from "../../app/standing.tsx";
import { Cautions } from "../../parts/Cautions.tsx";
import { KeyHint } from "../../parts/KeyHint.tsx";
import { Stack } from "../../parts/layout/Stack.tsx";
import { numbersOf, stagesOf } from "../../words/ruleNumbers.ts";
import { useSay } from "../../words/say.ts";
import css from "./Rules.module.css";

const parts = ["setUp", "run", "counts", "score", "stop"] as const;

interface RulesProps {
  readonly test: TestCode;
  /** The frozen parameters of the day. */
  readonly parameters: unknown;
  readonly folded: boolean;
  readonly onFold: () => void;
}

/** The rules of the test beside the entry, in our words and with the numbers of this day. */
export function Rules({ test, parameters, folded, onFold }: RulesProps) {
  const { t } = useTranslation("station");
  const id = useId();
  return (
    <section className={css.rules} aria-labelledby={id} data-test={test}>
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
    </section>
  );
}

/** The same over a station that runs its test and needs the room. */
export function RulesInFull({ test, parameters }: Pick<RulesProps, "test" | "parameters">) {
  return (
    <Stack gap={3} data-test={test}>
      <Parts test={test} parameters={parameters} />
      <Paper test={test} />
    </Stack>
  );
}

function Paper({ test }: Pick<RulesProps, "test">) {
  const { t } = useTranslation("instructions");
  const { post } = useStanding();
  if (!mayGo(post, "/instructions")) return null;
  return (
    <Link className={css.paper} href={`/instructions/${test}`}>
      {t("link")}
    </Link>
  );
}

function Parts({ test, parameters }: Pick<RulesProps, "test" | "parameters">) {
  const { t } = useTranslation("station");
  const values = numbersOf(test, parameters);
  return (
    <>
      {parts.map((part) => (
        <div key={part} className={css.part}>
          <h3>{t(`rules.head.${part}`)}</h3>
          <p>{t(`rules.${test}.${part}`, values)}</p>
          {part === "run" && <Steps test={test} parameters={parameters} />}
        </div>
      ))}
      <Cautions size="full" />
    </>
  );
}

/** The stages of the plank, or the exercises of a round, one a line. */
function Steps({ test, parameters }: Pick<RulesProps, "test" | "parameters">): ReactNode {
  const { t } = useTranslation("station");
  const say = useSay();
  if (test === "core") {
    return (
      <ol className={css.steps}>
        {stagesOf(protocols.core.parameters.parse(parameters)).map((stage) => (
          <li key={stage.from}>
            <span className={css.figure}>{formatTime(stage.from * 1000, false)}</span> {say(stage.sentence)}
          </li>
        ))}
      </ol>
    );
  }
  if (test !== "endurance") return null;
  const { exercises } = protocols.endurance.parameters.parse(parameters);
  return (
    <ol className={css.steps}>
      {exercises.map(({ exercise, count }, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: an exercise may come twice in a round, and the order is frozen
        <li key={index}>{t(`exercise.${exercise}`, { count })}</li>
      ))}
    </ol>
  );
}
