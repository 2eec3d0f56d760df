import { useTranslation } from "react-i18next";
import { type Decider, deciderOf, decisionOf } from "../../../../electron/domain/people/questions.ts";
import { type TestCode, testCodes } from "../../../../electron/domain/tests/registry.ts";
import { Check } from "../../../parts/controls/Check.tsx";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { Row, Stack } from "../../../parts/flow/Stack.tsx";
import { TestMark } from "../../../parts/marks/TestMark.tsx";
import css from "./AdmissionForm.module.css";
import type { FormPart } from "./useAnswers.ts";

/** Asks which tests the athlete takes. A yes that matters asks for a decision; the program clears nobody. */
export function Decision({ answers, set, missing }: FormPart) {
  const { t } = useTranslation("checkIn");
  const decision = decisionOf(answers);
  const decider = deciderOf(answers);
  return (
    <div className={css.group} data-decider={decider}>
      {decider !== null && <Worry decider={decider} />}
      <div data-part="decision" className={css.row} data-missing={missing.has("decision")}>
        <span aria-hidden="true">{t("decision.label")}</span>
        <Choice
          label={t("decision.label")}
          hideLabel
          options={(["all", "some", "none"] as const).map((value) => ({
            value,
            label: t(`decision.${value}`),
          }))}
          value={decision}
          onChange={(chosen) => set({ decision: chosen })}
          error={missing.has("decision") ? t("decision.choose") : null}
        />
      </div>
      {decision === "some" && (
        <LeaveOut
          leaveOut={answers.leaveOut}
          onChange={(leaveOut) => set({ leaveOut })}
          error={missing.has("leaveOut") ? t("decision.leaveOutNone") : null}
        />
      )}
    </div>
  );
}

/** Names who has to decide about a yes. It does not repeat the answer: others may read along. */
function Worry({ decider }: { readonly decider: Decider }) {
  const { t } = useTranslation("checkIn");
  return (
    <Stack className={css.worry}>
      <strong>{t(`worry.${decider}`)}</strong>
      <span>
        {t(`worry.${decider}What`)} {t("worry.what")}
      </span>
    </Stack>
  );
}

interface LeaveOutProps {
  readonly leaveOut: ReadonlySet<TestCode>;
  readonly onChange: (leaveOut: ReadonlySet<TestCode>) => void;
  readonly error: string | null;
}

function LeaveOut({ leaveOut, onChange, error }: LeaveOutProps) {
  const { t } = useTranslation("checkIn");
  function mark(test: TestCode, left: boolean): void {
    const others = [...leaveOut].filter((other) => other !== test);
    onChange(new Set(left ? [...others, test] : others));
  }
  return (
    <fieldset data-part="leaveOut">
      <legend className={css.label}>{t("decision.leaveOut")}</legend>
      <Row gap={5} lines={1} wrap>
        {testCodes.map((test) => (
          <Check key={test} checked={leaveOut.has(test)} onChange={(left) => mark(test, left)}>
            <TestMark test={test} size="small" name="ability" />
          </Check>
        ))}
      </Row>
      {error !== null && (
        <p className={`alert ${css.error}`} role="alert">
          {error}
        </p>
      )}
    </fieldset>
  );
}
