import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { Questions } from "../../app/answers.ts";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { keepAndSend } from "../../app/kept-entries.ts";
import { isDevice } from "../../app/table.ts";
import { Button } from "../../parts/controls/Button.tsx";
import { mendedBy } from "./mended.ts";
import type { AttemptView } from "./types.ts";

interface VoidOnlyProps {
  readonly attempt: AttemptView;
  readonly reason: string;
  readonly onMissing: () => void;
  readonly onDone: () => void;
}

type Void = Questions["station"]["void"];

/** Voids the attempt with nothing in its place. */
export function VoidOnly({ attempt, reason, onMissing, onDone }: VoidOnlyProps) {
  const { t } = useTranslation("station");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const options = trpc.station.void.mutationOptions({ onSuccess: onDone });
  const voidKept = (input: Void) => keepVoid(attempt, input);
  const end = useMutation(isDevice ? { ...options, mutationFn: voidKept } : options);
  async function submit(): Promise<void> {
    if (reason.trim() === "") return onMissing();
    const by = await ask();
    if (by !== null) end.mutate({ attemptId: attempt.attemptId, reason, by });
  }
  return (
    <Button kind="danger" busy={end.isPending} onPress={() => void submit()}>
      {t("correct.voidOnly")}
    </Button>
  );
}

/** The device's disk first; then the table. Twice changes nothing: an attempt that is void stays so. */
async function keepVoid(attempt: AttemptView, input: Void) {
  const mended = await mendedBy(attempt);
  await keepAndSend({ what: "void", id: crypto.randomUUID(), test: attempt.test, input, mended });
  return { told: null };
}
