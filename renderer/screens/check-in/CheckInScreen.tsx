import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { EmptyState } from "../../parts/layout/EmptyState.tsx";
import { Screen } from "../../parts/layout/Screen.tsx";
import { Table } from "./Table.tsx";

/** Checks athletes in: finds them, asks the questions, gives bibs; `id`: the first athlete to open. */
export function CheckInScreen({ id }: { readonly id: string | null }) {
  const { t } = useTranslation("checkIn");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day;
  if (day === null) return <Redirect to="/" />;
  if (day?.state === "open") {
    return <Table key={id} date={day.heldOn} firstId={id !== null && /^\d+$/.test(id) ? Number(id) : null} />;
  }
  return (
    <Screen title={t("title")} ready={current.isFetched}>
      <Answer query={current}>
        {() => (
          <EmptyState
            title={t("notOpen.title")}
            action={
              <LinkButton kind="primary" to="/day">
                {t("notOpen.go")}
              </LinkButton>
            }
          >
            <p>{t("notOpen.what")}</p>
          </EmptyState>
        )}
      </Answer>
    </Screen>
  );
}
