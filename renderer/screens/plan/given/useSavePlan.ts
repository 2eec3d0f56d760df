import { useMutation } from "@tanstack/react-query";
import type { PlanSettings } from "../../../../electron/domain/plan/settings.ts";
import type { Sentence } from "../../../../electron/domain/words.ts";
import { useTRPC } from "../../../app/client.tsx";
import { tellDone } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import type { Planned } from "../types.ts";
import { settingsOf } from "./typed.ts";

/** A part of a plan on its way to the store. */
export interface Saving {
  readonly save: (change: Partial<PlanSettings>) => void;
  readonly busy: boolean;
  /** Why it was refused; null otherwise. */
  readonly refusal: Sentence | null;
}

/** Saves a changed part of what is planned; `onSaved` closes what it was typed in. */
export function useSavePlan(planned: Planned, onSaved: () => void): Saving {
  const trpc = useTRPC();
  const keep = useMutation(
    trpc.plan.save.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess: tellDone({ key: "plan:given.saved" }, onSaved),
    }),
  );
  return {
    save: (change) => keep.mutate({ dayId: planned.dayId, settings: { ...settingsOf(planned), ...change } }),
    busy: keep.isPending,
    refusal: keep.isError ? sentenceOf(keep.error) : null,
  };
}
