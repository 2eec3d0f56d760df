import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { Button } from "../../parts/controls/Button.tsx";

/** Puts the people of the last day on the empty list of the next one. */
export function ListAgain({ last: { title } }: { readonly last: { readonly title: string } }) {
  const { t } = useTranslation("planning");
  const trpc = useTRPC();
  const listAgain = useMutation(
    trpc.day.listAgain.mutationOptions({
      onSuccess({ added }) {
        tell({ tone: "done", sentence: { key: "planning:again.done", values: { count: added, title } } });
      },
    }),
  );
  return (
    <Button busy={listAgain.isPending} onPress={() => listAgain.mutate()}>
      {t("again.do", { title })}
    </Button>
  );
}
