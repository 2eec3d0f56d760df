import { useMutation, useQuery } from "@tanstack/react-query";
import type { Answers } from "../../app/answers.ts";
import { queryClient, useTRPC } from "../../app/client.tsx";

export type NetworkView = Answers["network"]["view"];
export type Listed = NetworkView["devices"][number];

/** The code runs out and devices fall silent while nothing changes, in ms. */
const refetchInterval = 1_000;

export function useNetwork() {
  const trpc = useTRPC();
  return useQuery(trpc.network.view.queryOptions(undefined, { refetchInterval }));
}

/** All that the screen asks of the network; each reads the view again, so that what was pressed is seen at once. */
export function useNetworkActs() {
  const trpc = useTRPC();
  const onSuccess = () => queryClient.invalidateQueries(trpc.network.view.queryFilter());
  const options = { onSuccess };
  return {
    turnOn: useMutation(trpc.network.turnOn.mutationOptions(options)),
    turnOff: useMutation(trpc.network.turnOff.mutationOptions(options)),
    openJoining: useMutation(trpc.network.openJoining.mutationOptions(options)),
    closeJoining: useMutation(trpc.network.closeJoining.mutationOptions(options)),
    answer: useMutation(trpc.network.answer.mutationOptions(options)),
    place: useMutation(trpc.network.place.mutationOptions(options)),
    sendAway: useMutation(trpc.network.sendAway.mutationOptions(options)),
    sendAllAway: useMutation(trpc.network.sendAllAway.mutationOptions(options)),
  };
}
