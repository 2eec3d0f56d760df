import { useMutation } from "@tanstack/react-query";
import type { TestCode } from "../../../../../electron/domain/tests/registry.ts";
import { useTRPC } from "../../../../app/client.tsx";
import { useInitials } from "../../../../app/initials.tsx";
import { tell } from "../../../../app/messages.ts";
import { sentenceOf } from "../../../../app/trouble.ts";
import type { LiveHeat } from "../../../../tests/live/types.ts";
import { setTapper } from "../sync/heatOutboxes.ts";

/** `asked`: the athlete still rests, and the message strip offers to let them start all the same. */
type Placed = "placed" | "asked" | "refused";

/** The actions on a heat's lanes before they begin. The message strip says the refusals. */
export interface Gathering {
  readonly callNext: () => Promise<boolean>;
  /** Places the athlete of a scanned or typed bib. */
  readonly placeBib: (bib: string, lane?: number) => Promise<Placed>;
  readonly setVariant: (athleteId: number, variant: string) => void;
  readonly move: (athleteId: number, to: number) => void;
  readonly sendBack: (athleteId: number) => void;
  readonly absent: (athleteId: number) => void;
  readonly busy: boolean;
}

/**
 * @param lanes number of lanes of the station
 * @param showOwn shows the own heat: a new one is always the own, whichever was looked at before
 */
export function useGather(
  test: TestCode,
  heat: LiveHeat | null,
  lanes: number,
  showOwn: () => void,
): Gathering {
  const trpc = useTRPC();
  const { ask } = useInitials();
  const gather = useMutation(trpc.heat.gather.mutationOptions());
  const place = useMutation(trpc.heat.place.mutationOptions());
  const variant = useMutation(trpc.heat.variant.mutationOptions());
  const move = useMutation(trpc.heat.move.mutationOptions());
  const sendBack = useMutation(trpc.heat.sendBack.mutationOptions());
  const absent = useMutation(trpc.heat.absent.mutationOptions());

  /** Returns the heat to gather: a test has one at a time, and asking for another ends one that is over. */
  function wanted() {
    const isAtHand = heat !== null && !heat.allDone;
    return { test, lanes, heatId: isAtHand ? heat.heatId : crypto.randomUUID() };
  }
  async function withInitials(
    act: (by: string) => Promise<{ heatId: string }>,
    onRefused?: (error: unknown) => void,
  ): Promise<boolean> {
    const by = await ask();
    if (by === null) return false;
    try {
      const { heatId } = await act(by);
      setTapper(heatId, by);
      if (heatId !== heat?.heatId) showOwn();
      return true;
    } catch (error) {
      // The client has said it already.
      onRefused?.(error);
      return false;
    }
  }
  async function placeBib(bib: string, lane?: number, evenResting = false): Promise<Placed> {
    const where = lane === undefined ? {} : { lane };
    let rests = false;
    const isPlaced = await withInitials(
      (by) => place.mutateAsync({ ...wanted(), by, who: { bib }, ...where, evenResting }),
      (error) => {
        rests = offerStart(error, () => void placeBib(bib, lane, true));
      },
    );
    return isPlaced ? "placed" : rests ? "asked" : "refused";
  }
  return {
    callNext: () =>
      withInitials(async (by) => {
        const gathered = await gather.mutateAsync({ ...wanted(), by });
        const { resting, placed } = gathered;
        if (resting !== null && (placed.length === 0 || resting.soon)) {
          const key = resting.soon ? "live:gather.soon" : "live:gather.rests";
          tell({ tone: "note", about: { group: "heat" }, sentence: { key, values: { bib: resting.bib } } });
        }
        return gathered;
      }),
    placeBib,
    setVariant: (athleteId, to) => {
      if (heat !== null) variant.mutate({ heatId: heat.heatId, athleteId, variant: to });
    },
    move: (athleteId, to) => {
      if (heat !== null) move.mutate({ heatId: heat.heatId, athleteId, to });
    },
    sendBack: (athleteId) => {
      if (heat !== null) sendBack.mutate({ heatId: heat.heatId, athleteId });
    },
    absent(athleteId) {
      if (heat === null) return;
      const { heatId } = heat;
      void ask().then((by) => {
        if (by !== null) absent.mutate({ heatId, athleteId, by, id: crypto.randomUUID() });
      });
    },
    busy: gather.isPending || place.isPending,
  };
}

/**
 * Says again that an athlete still rests, with the decision that this sentence offers: a button, never the next Enter.
 * Returns false where they don't.
 */
function offerStart(error: unknown, letStart: () => void): boolean {
  const sentence = sentenceOf(error);
  if (sentence.key !== "heat.rests") return false;
  const action = { label: { key: "live:gather.letStart" }, act: letStart };
  tell({ tone: "alert", sentence, about: { group: "heat" }, action });
  return true;
}
