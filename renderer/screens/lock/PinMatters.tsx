import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { useStanding } from "../../app/standing.tsx";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { PinEntry } from "../../parts/controls/PinEntry.tsx";
import { useWait } from "../../parts/controls/pinTries.ts";
import { Row } from "../../parts/flow/Stack.tsx";
import { useSay } from "../../words/say.ts";
import { SetPin } from "./SetPin.tsx";

/** Changes or removes the PIN. */
export function PinMatters() {
  const { t } = useTranslation("lock");
  const [open, setOpen] = useState<"change" | "remove" | null>(null);
  const { folder } = useStanding();
  const close = () => setOpen(null);
  return (
    <>
      <p className="measure">{t("pin.forgotten", { folder })}</p>
      <Row gap={3} wrap>
        <Button onPress={() => setOpen("change")}>{t("pin.change")}</Button>
        <Button kind="danger" onPress={() => setOpen("remove")}>
          {t("pin.remove")}
        </Button>
      </Row>
      <Dialog open={open === "change"} onClose={close} kind="question" title={t("pin.change")}>
        <SetPin onDone={close} />
      </Dialog>
      <Dialog open={open === "remove"} onClose={close} kind="question" title={t("pin.remove")}>
        <p>{t("pin.removeWhat")}</p>
        <RemovePin onDone={close} />
      </Dialog>
    </>
  );
}

function RemovePin({ onDone }: { readonly onDone: () => void }) {
  const { t } = useTranslation("lock");
  const say = useSay();
  const trpc = useTRPC();
  const { seconds, begin } = useWait(useStanding().waitMs);
  const [error, setError] = useState<string | null>(null);
  const remove = useMutation(
    trpc.lock.removePin.mutationOptions({
      meta: { shownByScreen: true },
      async onSuccess(tried) {
        if (tried.outcome !== "right") {
          begin(tried.waitMs);
          return setError(t(tried.outcome === "wrong" ? "unlock.wrong" : "unlock.tooSoon"));
        }
        tell({ tone: "done", sentence: { key: "lock:pin.removed" } });
        onDone();
        await queryClient.invalidateQueries(trpc.lock.pathFilter());
      },
      onError: (refused) => setError(say(sentenceOf(refused))),
    }),
  );
  return (
    <PinEntry
      fields={[{ key: "current", label: t("set.current"), error }]}
      submit={t("pin.remove")}
      busy={remove.isPending}
      seconds={seconds}
      beside={<Button onPress={onDone}>{t("pin.keep")}</Button>}
      onSubmit={({ current = "" }) => remove.mutate({ current })}
    />
  );
}
