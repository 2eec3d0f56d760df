import { useMutation } from "@tanstack/react-query";
import { type ReactNode, useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useStanding } from "../../app/standing.tsx";
import { sentenceOf } from "../../app/trouble.ts";
import { useSay } from "../../words/say.ts";
import { PinEntry } from "./PinEntry.tsx";
import { useWait } from "./pinTries.ts";

interface UnlockFormProps {
  readonly onOpen?: () => void;
  readonly beside?: ReactNode;
}

/** Asks for the PIN that returns the desk to the organiser, with the wait after wrong ones. */
export function UnlockForm({ onOpen, beside }: UnlockFormProps) {
  const { t } = useTranslation("lock");
  const say = useSay();
  const trpc = useTRPC();
  const { seconds, begin } = useWait(useStanding().waitMs);
  const [tries, setTries] = useState(0);
  const [error, setError] = useState<string | null>(null);
  const unlock = useMutation(
    trpc.lock.unlock.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess(tried) {
        if (tried.outcome === "right") return onOpen?.();
        begin(tried.waitMs);
        setError(tried.outcome === "wrong" ? t("unlock.wrong") : t("unlock.tooSoon"));
        // The field starts empty again.
        setTries((count) => count + 1);
      },
      onError: (refused) => setError(say(sentenceOf(refused))),
    }),
  );
  return (
    <PinEntry
      key={tries}
      fields={[{ key: "pin", label: t("unlock.label"), error }]}
      submit={t("unlock.go")}
      busy={unlock.isPending}
      seconds={seconds}
      beside={beside}
      onSubmit={({ pin = "" }) => (pin === "" ? setError(t("unlock.empty")) : unlock.mutate({ pin }))}
    />
  );
}
