import { useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../app/client.tsx";
import { useTestWords } from "../../app/testWords.ts";
import { Button, LinkButton } from "../../parts/controls/Button.tsx";
import { Row } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { RestDialog } from "../../parts/plan/RestDialog.tsx";
import { faceOf, readParameters } from "../../tests/registry.ts";
import { useRulesLine } from "../../tests/useRulesLine.ts";
import { RuleDialog } from "./RuleDialog.tsx";
import css from "./Rules.module.css";

interface RulesProps {
  readonly day: { readonly state: "planned" | "open" | "closed"; readonly restMinutes: number };
}

/** Describes today's rules of the five tests in words; they can be changed until the day opens. */
export function Rules({ day }: RulesProps) {
  const { t } = useTranslation(["day", "instructions", "papers"]);
  const trpc = useTRPC();
  const protocols = useQuery(trpc.day.protocols.queryOptions());
  const [changing, setChanging] = useState<{ test: TestCode; parameters: unknown } | null>(null);
  const planned = day.state === "planned";
  return (
    <Section
      title={t("rules.title")}
      aside={
        <Row gap={3} lines={2} wrap>
          <LinkButton to="/papers">{t("papers:linkAll")}</LinkButton>
          <LinkButton to="/instructions">{t("instructions:linkAll")}</LinkButton>
        </Row>
      }
    >
      <p className="quiet measure">{planned ? t("rules.planned") : t("rules.frozen")}</p>
      <Answer query={protocols}>
        {(told) => (
          <ol>
            {told.map(({ test, parameters, standard }) => (
              <RuleRow
                key={test}
                test={test}
                parameters={parameters}
                standard={standard}
                onChange={planned ? () => setChanging({ test, parameters }) : null}
              />
            ))}
            <Rest minutes={day.restMinutes} />
          </ol>
        )}
      </Answer>
      {changing !== null && (
        <RuleDialog test={changing.test} parameters={changing.parameters} onClose={() => setChanging(null)} />
      )}
    </Section>
  );
}

interface RuleRowProps {
  readonly test: TestCode;
  readonly parameters: unknown;
  readonly standard: boolean;
  /** Null when frozen. */
  readonly onChange: (() => void) | null;
}

function RuleRow({ test, parameters, standard, onChange }: RuleRowProps) {
  const { t } = useTranslation(["day", "common"]);
  const testWord = useTestWords();
  const rulesLine = useRulesLine();
  const name = testWord(test, "name");
  const changeable = onChange !== null && faceOf(test).settings(readParameters(test, parameters)).length > 0;
  return (
    <li className={css.rule}>
      <TestMark test={test} name="ability" />
      <span>{rulesLine(test, parameters)}</span>
      <Tag>{standard ? t("rules.standard") : t("rules.changed")}</Tag>
      <span>
        {changeable && (
          <Button label={t("rules.changeWhich", { test: name })} onPress={onChange}>
            {t("rules.change")}
          </Button>
        )}
      </span>
    </li>
  );
}

/** Sets the minutes of rest between two tests, at any time, since no mark depends on it. */
function Rest({ minutes }: { readonly minutes: number }) {
  const { t } = useTranslation("day");
  const [changing, setChanging] = useState(false);
  return (
    <li className={css.rule}>
      <strong>{t("rules.rest.title")}</strong>
      <span>{t("rules.rest.summary", { count: minutes })}</span>
      <span />
      <Button label={t("rules.rest.changeWhich")} onPress={() => setChanging(true)}>
        {t("rules.change")}
      </Button>
      {changing && <RestDialog minutes={minutes} onClose={() => setChanging(false)} />}
    </li>
  );
}
