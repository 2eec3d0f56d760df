import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/Button.tsx";
import { Panel } from "../../parts/Panel.tsx";

/** The way into the invented day. */
export function DemoPanel() {
  const { t } = useTranslation("home");
  const [, go] = useLocation();
  const trpc = useTRPC();
  const open = useMutation(
    trpc.day.openDemo.mutationOptions({
      async onSuccess() {
        await queryClient.invalidateQueries();
        go("/day");
      },
    }),
  );
  return (
    <Panel paper title={t("demo.title")}>
      <p>{t("demo.what")}</p>
      <div>
        <Button size="large" busy={open.isPending} onPress={() => open.mutate()}>
          {t("demo.open")}
        </Button>
      </div>
    </Panel>
  );
}
