import { useMutation } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { pinTrouble } from "../../../electron/domain/lock/pin.ts";
import { queryClient, useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { useStanding } from "../../app/standing.tsx";
import { sentenceOf } from "../../app/trouble.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { PinEntry } from "../../parts/controls/PinEntry.tsx";
import { useWait } from "../../parts/controls/pinTries.ts";
import { useSay } from "../../words/say.ts";

interface Errors {
  readonly current?: string;
  readonly pin?: string;
  readonly again?: string;
}

/** Sets a PIN, typed twice; a change also asks for the current one. */
export function SetPin({ onDone }: { readonly onDone?: () => void }) {
  const { t } = useTranslation("lock");
  const say = useSay();
  const trpc = useTRPC();
  const { pinSet, waitMs } = useStanding();
  const { seconds, begin } = useWait(waitMs);
  const [errors, setErrors] = useState<Errors>({});
  const set = useMutation(
    trpc.lock.setPin.mutationOptions({
      meta: { shownByScreen: true },
      async onSuccess(tried) {
        if (tried.outcome !== "right") {
          begin(tried.waitMs);
          return setErrors({ current: t(tried.outcome === "wrong" ? "unlock.wrong" : "unlock.tooSoon") });
        }
        tell({ tone: "done", sentence: { key: pinSet ? "lock:pin.changed" : "lock:pin.set" } });
        onDone?.();
        await queryClient.invalidateQueries(trpc.lock.pathFilter());
      },
      onError: (refused) => setErrors({ pin: say(sentenceOf(refused)) }),
    }),
  );

  function errorsIn(current: string, pin: string, again: string): Errors {
    const trouble = pinTrouble(pin);
    if (pinSet && current === "") return { current: t("unlock.empty") };
    if (trouble !== null) return { pin: say(trouble) };
    return pin === again ? {} : { again: t("set.differs") };
  }
  function submit({ current = "", pin = "", again = "" }: Readonly<Record<string, string>>): void {
    const found = errorsIn(current, pin, again);
    setErrors(found);
    if (Object.keys(found).length === 0) set.mutate({ pin, current: pinSet ? current : null });
  }
  const fields = [
    { key: "pin", label: t("set.pin"), help: t("set.help"), error: errors.pin ?? null },
    { key: "again", label: t("set.again"), error: errors.again ?? null },
  ];
  const current = { key: "current", label: t("set.current"), error: errors.current ?? null };
  return (
    <PinEntry
      fields={pinSet ? [current, ...fields] : fields}
      submit={pinSet ? t("set.change") : t("set.go")}
      busy={set.isPending}
      seconds={seconds}
      beside={onDone !== undefined && <Button onPress={onDone}>{t("pin.keep")}</Button>}
      onSubmit={submit}
    />
  );
}
