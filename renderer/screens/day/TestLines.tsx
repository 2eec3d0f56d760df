import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { Section } from "../../parts/layout/Panel.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { writeTime } from "../../words/dates.ts";
import type { Overview } from "./overview.ts";
import css from "./TestLines.module.css";

/** Draws a line per test, painted by its athletes: done, waiting, to come. */
export function TestLines({ tests }: { readonly tests: Overview["tests"] }) {
  const { t } = useTranslation(["day", "noise", "plan"]);
  return (
    <Section
      title={t("tests.title")}
      aside={
        <Row gap={4} lines={2} wrap>
          <Link href="/plan">{t("plan:linkOpen")}</Link>
          <Link href="/noise">{t("noise:link")}</Link>
        </Row>
      }
    >
      <Stack as="ol" gap={2}>
        {tests.map((test) => (
          <TestLine key={test.test} test={test} />
        ))}
      </Stack>
    </Section>
  );
}

function TestLine({ test: told }: { readonly test: Overview["tests"][number] }) {
  const { t, i18n } = useTranslation("day");
  const { test, done, waiting, later, longestWait } = told;
  return (
    <li className={css.test} data-test={test}>
      <Link className={`strong ${css.name}`} href={`/station/${test}`}>
        <TestMark test={test} name="ability" />
      </Link>
      <div className={`small quiet ${css.words}`}>
        <strong className={css.done}>{t("tests.done", { count: done })}</strong>
        <span>
          {t("tests.waiting", { count: waiting })}
          {longestWait !== null && `, ${t("tests.since", { time: writeTime(longestWait, i18n.language) })}`}
        </span>
        <span>{t("tests.later", { count: later })}</span>
      </div>
      <Heats heats={told.heats} />
      <div className={css.line} aria-hidden="true">
        <span data-part="done" style={{ flexGrow: done }} />
        <span data-part="waiting" style={{ flexGrow: waiting }} />
        <span data-part="later" style={{ flexGrow: later }} />
      </div>
    </li>
  );
}

/** Lists all heats of a test, at the table and at each device: who has it, and the bibs in its lanes. */
function Heats({ heats }: { readonly heats: Overview["tests"][number]["heats"] }) {
  const { t } = useTranslation(["day", "live"]);
  const held = heats.filter(({ bibs }) => bibs.length > 0);
  if (held.length === 0) return null;
  return (
    <ul className={`small ${css.heats}`}>
      {held.map(({ heatId, who, isTable, state, bibs }) => (
        <li key={heatId}>
          {t(`day:tests.heat.${state}`, {
            who: who ?? t(isTable ? "live:others.table" : "live:others.gone"),
            bibs: bibs.join(", "),
          })}
        </li>
      ))}
    </ul>
  );
}
