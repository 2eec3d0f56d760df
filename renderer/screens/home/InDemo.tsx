import { useTranslation } from "react-i18next";
import { LeaveDemo } from "../../parts/LeaveDemo.tsx";
import { Panel } from "../../parts/Panel.tsx";

/** In the demonstration no day of one's own is begun: it would be thrown away with the rest. */
export function InDemo() {
  const { t } = useTranslation("home");
  return (
    <Panel paper title={t("inDemo.title")}>
      <p>{t("inDemo.what")}</p>
      <div>
        <LeaveDemo />
      </div>
    </Panel>
  );
}
