import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Link } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { Answer } from "../../parts/Answer.tsx";
import { Screen } from "../../parts/Screen.tsx";
import { BackupsPanel } from "./backups/BackupsPanel.tsx";
import { DayAtHand } from "./DayAtHand.tsx";
import { DemoPanel } from "./DemoPanel.tsx";
import { EarlierDays } from "./EarlierDays.tsx";
import css from "./HomeScreen.module.css";
import { InDemo } from "./InDemo.tsx";
import { NewDayPanel } from "./NewDayForm.tsx";
import { OrderOfTests } from "./OrderOfTests.tsx";

/** The first screen: start a day of your own, go to the one at hand, or look around in the demo day. */
export function HomeScreen() {
  const { t } = useTranslation("home");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const atHand = current.data?.day ?? null;
  return (
    <Screen
      title={atHand === null ? t("title") : t("titleAtHand")}
      lead={t("lead")}
      actions={<Help />}
      ground="floor"
      ready={current.isFetched}
    >
      <OrderOfTests />
      <Answer query={current}>
        {({ day, kind, today, earlier }) => (
          <>
            <div className={css.ways}>
              {day !== null && <DayAtHand day={day} />}
              {day === null && kind === "own" && <NewDayPanel today={today} />}
              {kind === "own" ? <DemoPanel /> : <InDemo />}
            </div>
            {earlier.length > 0 && <EarlierDays days={earlier} />}
            <BackupsPanel />
          </>
        )}
      </Answer>
    </Screen>
  );
}

/** The way to a report for whoever helps. */
function Help() {
  const { t } = useTranslation("home");
  return (
    <p className={css.help}>
      {t("help.question")} <Link href="/report">{t("help.report")}</Link>
      <br />
      {t("help.lockQuestion")} <Link href="/lock">{t("help.lock")}</Link>
    </p>
  );
}
