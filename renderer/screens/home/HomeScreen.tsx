import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { writeDate } from "../../app/dates.ts";
import { Answer } from "../../parts/Answer.tsx";
import { LinkButton } from "../../parts/Button.tsx";
import { Panel, Section } from "../../parts/Panel.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { DemoPanel } from "./DemoPanel.tsx";
import css from "./HomeScreen.module.css";
import { NewDayForm } from "./NewDayForm.tsx";
import { OrderOfTests } from "./OrderOfTests.tsx";

/** The first screen: start a day of your own, go to the one at hand, or look around in the demo day. */
export function HomeScreen() {
  const { t, i18n } = useTranslation("home");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  return (
    <Screen title={t("title")} lead={t("lead")} ready={current.isFetched}>
      <OrderOfTests />
      <Answer query={current}>
        {({ day, today, earlier }) => (
          <>
            <div className={css.ways}>
              <Panel title={t("own.title")}>
                {day === null ? (
                  <NewDayForm today={today} />
                ) : (
                  <LinkButton kind="primary" size="large" to="/day">
                    {t("own.resume")}
                  </LinkButton>
                )}
              </Panel>
              <DemoPanel />
            </div>
            {earlier.length > 0 && (
              <Section title={t("earlier.title")}>
                <ul className={css.earlier}>
                  {earlier.map((past) => (
                    <li key={past.id}>
                      <strong>{past.title}</strong> {writeDate(past.date, i18n.language)}
                    </li>
                  ))}
                </ul>
              </Section>
            )}
          </>
        )}
      </Answer>
    </Screen>
  );
}
