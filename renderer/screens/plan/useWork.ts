import { useMutation, useQuery } from "@tanstack/react-query";
import { useEffect } from "react";
import type { Sentence } from "../../../electron/domain/words.ts";
import type { Questions } from "../../app/answers.ts";
import { useTRPC } from "../../app/client.tsx";
import { sentenceOf } from "../../app/trouble.ts";

type Kind = Questions["plan"]["work"]["kind"];

/** Ms between two looks at how far a calculation is. */
const lookMs = 250;

/** A calculation as the screen shows it. */
export interface Work {
  readonly at: "none" | "running" | "done" | "stopped" | "failed";
  /** 0 to 1. */
  readonly done: number;
  /** Why it could not begin; null otherwise. */
  readonly refusal: Sentence | null;
  readonly begin: () => void;
  readonly stop: () => void;
}

/**
 * Follows a calculation of the plan. With `auto` it begins by itself where there is none of the settings as they are;
 * one that somebody stopped waits for them.
 */
export function useWork(kind: Kind, auto: boolean): Work {
  const trpc = useTRPC();
  const progress = useQuery(
    trpc.plan.progress.queryOptions(undefined, {
      refetchInterval: ({ state }) => (state.data?.[kind]?.state === "running" ? lookMs : false),
    }),
  );
  const told = progress.data?.[kind];
  const { refetch } = progress;
  const work = useMutation(
    trpc.plan.work.mutationOptions({
      meta: { shownByScreen: true },
      onSettled: () => refetch(),
    }),
  );
  const halt = useMutation(trpc.plan.stop.mutationOptions({ onSettled: () => refetch() }));
  const { mutate, isPending, isError } = work;
  const isMissing = told === null || told?.stale === true;
  useEffect(() => {
    if (auto && isMissing && !isPending && !isError) mutate({ kind });
  }, [auto, isMissing, isPending, isError, mutate, kind]);
  return {
    at: told === undefined || told === null || told.stale ? "none" : told.state,
    done: told?.done ?? 0,
    refusal: work.isError ? sentenceOf(work.error) : null,
    begin: () => mutate({ kind }),
    stop: () => halt.mutate({ kind }),
  };
}
