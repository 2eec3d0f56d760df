import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { Redirect } from "wouter";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Answer } from "../../parts/Answer.tsx";
import { Button } from "../../parts/Button.tsx";
import { Screen } from "../../parts/Screen.tsx";

/** The day at one glance. */
export function DayScreen() {
  const { t } = useTranslation("day");
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const open = useMutation(
    trpc.day.open.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "day:opened" } }),
    }),
  );
  const day = current.data?.day;
  if (day === null) return <Redirect to="/" />;
  const opening = (
    <Button kind="primary" busy={open.isPending} onPress={() => open.mutate()}>
      {t("open")}
    </Button>
  );
  return (
    <Screen
      title={t("title")}
      ready={current.isFetched}
      {...(day?.state === "planned" && { actions: opening })}
    >
      <Answer query={current}>{() => null}</Answer>
    </Screen>
  );
}
