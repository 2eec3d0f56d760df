import { useTranslation } from "react-i18next";
import type { TestCode } from "../../../electron/domain/protocols/protocol.ts";
import { Screen } from "../../parts/Screen.tsx";
import { TestMark } from "../../parts/TestMark.tsx";

/** The station of one test. */
export function StationScreen({ test }: { readonly test: TestCode }) {
  const { t } = useTranslation("common");
  return (
    <Screen title={t(`test.${test}.name`)} mark={<TestMark test={test} size="large" />} ready>
      {null}
    </Screen>
  );
}
