import { useTranslation } from "react-i18next";
import { Row, Stack } from "../../parts/flow/Stack.tsx";
import { TestMark } from "../../parts/marks/TestMark.tsx";
import { writeNumber } from "../../words/numbers.ts";
import css from "./Reference.module.css";
import type { KeptTest } from "./types.ts";

/** Lists the number of marks per test: first those that compare, then those by other rules. */
export function Tests({ tests }: { readonly tests: readonly KeptTest[] }) {
  const { t } = useTranslation("reference");
  const [same, other] = [true, false].map((rules) => tests.filter(({ sameRules }) => sameRules === rules));
  return (
    <Stack gap={1}>
      {same !== undefined && same.length > 0 && <Line tests={same} />}
      {other !== undefined && other.length > 0 && (
        <Row gap={3} lines={1} align="center" wrap className="small quiet">
          {t("tests.otherRules")} <Line tests={other} />
        </Row>
      )}
    </Stack>
  );
}

function Line({ tests }: { readonly tests: readonly KeptTest[] }) {
  const { t, i18n } = useTranslation("reference");
  return (
    <Row as="ul" gap={4} lines={1} wrap className={css.line}>
      {tests.map(({ test, variant, marks }) => (
        <li key={`${test} ${variant}`}>
          <TestMark test={test} size="small" /> {writeNumber(marks, i18n.language)}
          {variant === "knee" && ` ${t("tests.knee")}`}
        </li>
      ))}
    </Row>
  );
}
