import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../controls/Button.tsx";

/** The button that leaves the demo, back to the hall's own days. */
export function LeaveDemo({ kind = "quiet" }: { readonly kind?: "primary" | "quiet" }) {
  const { t } = useTranslation("common");
  const [, go] = useLocation();
  const trpc = useTRPC();
  const leave = useMutation(
    trpc.day.leaveDemo.mutationOptions({
      async onSuccess() {
        go("/");
        await queryClient.invalidateQueries();
        tell({ tone: "done", sentence: { key: "common:demo.left" }, follows: "once" });
      },
    }),
  );
  return (
    <Button kind={kind} busy={leave.isPending} onPress={() => leave.mutate()}>
      {t("demo.leave")}
    </Button>
  );
}
