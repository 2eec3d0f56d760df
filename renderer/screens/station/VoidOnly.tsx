import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useInitials } from "../../app/initials.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import type { AttemptView } from "./types.ts";

interface VoidOnlyProps {
  readonly attempt: AttemptView;
  readonly reason: string;
  readonly onMissing: () => void;
  readonly onDone: () => void;
}

/** Voids the attempt with nothing in its place. */
export function VoidOnly({ attempt, reason, onMissing, onDone }: VoidOnlyProps) {
  const { t } = useTranslation("station");
  const trpc = useTRPC();
  const { ask } = useInitials();
  const end = useMutation(trpc.station.void.mutationOptions({ onSuccess: onDone }));
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
