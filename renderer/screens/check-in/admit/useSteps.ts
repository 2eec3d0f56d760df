import { useMutation } from "@tanstack/react-query";
import { useTRPC } from "../../../app/client.tsx";
import { tell } from "../../../app/messages.ts";
import type { Before } from "../people.ts";

interface Person {
  readonly athleteId: number;
  readonly name: string;
}

/** Returns the steps at the table that need no questions; each reports itself and how to undo it. */
export function useSteps() {
  const trpc = useTRPC();
  const undo = useMutation(trpc.checkIn.undo.mutationOptions());
  const noShow = useMutation(trpc.checkIn.noShow.mutationOptions());
  const withdraw = useMutation(trpc.checkIn.withdraw.mutationOptions());

  async function takeBack({ athleteId, name }: Person, before: Before | null = null): Promise<void> {
    const { state } = await undo.mutateAsync({ athleteId, before });
    const key = state === "testing" ? "checkIn:told.backIn" : "checkIn:told.undone";
    tell({ tone: "done", sentence: { key, values: { name } }, about: { athleteId } });
  }

  function withUndo(person: Person, key: string): void {
    const label = { key: "checkIn:told.undo" };
    const act = () => void takeBack(person).catch(ignore);
    const about = { athleteId: person.athleteId };
    tell({ tone: "done", sentence: { key, values: { name: person.name } }, action: { label, act }, about });
  }

  return {
    busy: undo.isPending || noShow.isPending || withdraw.isPending,
    takeBack: (person: Person, before: Before | null = null) => takeBack(person, before).catch(ignore),
    noShow: async (person: Person) => {
      await noShow.mutateAsync({ athleteId: person.athleteId });
      withUndo(person, "checkIn:told.noShow");
    },
    withdraw: async (person: Person) => {
      await withdraw.mutateAsync({ athleteId: person.athleteId });
      withUndo(person, "checkIn:told.withdrawn");
    },
  };
}

/** The message strip has said it already (client.tsx). */
function ignore(): void {}
