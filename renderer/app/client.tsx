import { MutationCache, QueryClient, QueryClientProvider } from "@tanstack/react-query";
import {
  createTRPCClient,
  httpBatchLink,
  httpLink,
  httpSubscriptionLink,
  isNonJsonSerializable,
  splitLink,
} from "@trpc/client";
import { createTRPCContext } from "@trpc/tanstack-react-query";
import type { ReactNode } from "react";
import type { AppRouter } from "../../electron/api/router.ts";
import { overtake, tell } from "./messages.ts";
import { patientFetch } from "./patience.ts";
import { isDevice } from "./table.ts";
import { isUnanswered, sentenceOf } from "./trouble.ts";

/** At the desk nothing lies between; from a device a connection that died silently never ends by itself. */
const to = { url: "/trpc", ...(isDevice && { fetch: patientFetch }) };

/** The client of the API: files are sent as they are, everything else as JSON, changes as a stream. */
export const client = createTRPCClient<AppRouter>({
  links: [
    splitLink({
      condition: (operation) => operation.type === "subscription",
      true: httpSubscriptionLink({ url: to.url }),
      false: splitLink({
        condition: (operation) => isNonJsonSerializable(operation.input),
        true: httpLink(to),
        // The API takes up to 100 calls at once.
        false: httpBatchLink({ ...to, maxItems: 50 }),
      }),
    }),
  ],
});

declare module "@tanstack/react-query" {
  interface Register {
    mutationMeta: { readonly shownByScreen?: boolean };
  }
}

export type Client = typeof client;

const { TRPCProvider, useTRPC, useTRPCClient } = createTRPCContext<AppRouter>();

/**
 * The procedures as options for TanStack Query: `const trpc = useTRPC(); useQuery(trpc.day.current.queryOptions())`,
 * `useMutation(trpc.day.open.mutationOptions({ onSuccess }))`. Changes, made here or elsewhere, arrive by themselves
 * (`feed.ts`), a moment after the mutation's answer. Only if the next screen can't wait: `await
 * queryClient.invalidateQueries(trpc.day.current.queryFilter())` before going there.
 */
export { useTRPC, useTRPCClient };

/**
 * Retries a mutation only without an answer, since then nobody knows whether it was accepted; ids made by the client
 * prevent double entries. A refusal is an answer.
 */
function retryMutation(count: number, error: unknown): boolean {
  return count < 2 && isUnanswered(error);
}

/** Returns the first part of a mutation's procedure: "heat" of heat.start. */
function groupOf({ options }: { readonly options: { readonly mutationKey?: readonly unknown[] } }): string {
  const path: unknown = options.mutationKey?.[0];
  return Array.isArray(path) ? String(path[0]) : "";
}

function athleteIn(variables: unknown): number | undefined {
  if (typeof variables !== "object" || variables === null || !("athleteId" in variables)) return undefined;
  return typeof variables.athleteId === "number" ? variables.athleteId : undefined;
}

export const queryClient = new QueryClient({
  mutationCache: new MutationCache({
    onError(error, _variables, _result, mutation) {
      if (mutation.meta?.shownByScreen === true) return;
      tell({ tone: "alert", sentence: sentenceOf(error), about: { group: groupOf(mutation) } });
    },
    onSuccess(_answer, variables, _result, mutation) {
      overtake({ athleteId: athleteIn(variables), group: groupOf(mutation) });
    },
  }),
  defaultOptions: {
    queries: {
      networkMode: "always",
      // The change feed decides when to read again.
      staleTime: Number.POSITIVE_INFINITY,
      refetchOnWindowFocus: false,
      retry: (count, error) => count < 3 && isUnanswered(error),
      retryDelay: (count) => 200 * 2 ** count,
    },
    mutations: { networkMode: "always", retry: retryMutation, retryDelay: 300 },
  },
});

/**
 * Gives its children the API. A failed mutation is reported in the message strip; a screen that shows the error at a
 * field gives the mutation `meta: { shownByScreen: true }`.
 */
export function ClientProvider({ children }: { readonly children: ReactNode }) {
  return (
    <QueryClientProvider client={queryClient}>
      <TRPCProvider trpcClient={client} queryClient={queryClient}>
        {children}
      </TRPCProvider>
    </QueryClientProvider>
  );
}
