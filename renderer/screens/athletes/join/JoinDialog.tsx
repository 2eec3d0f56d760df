import { keepPreviousData, useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useTRPC } from "../../../app/client.tsx";
import { useInitials } from "../../../app/initials.tsx";
import { tell } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { Button } from "../../../parts/controls/Button.tsx";
import { Choice } from "../../../parts/controls/Choice.tsx";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { Dialog } from "../../../parts/controls/Dialog.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { asSentence } from "../../../parts/sheets/sheet.ts";
import { useWhoIs } from "../../../parts/steps/useStepWords.ts";
import { useSay } from "../../../words/say.ts";
import type { HeldAthlete } from "../held/types.ts";
import { BothRecords } from "./BothRecords.tsx";

interface JoinDialogProps {
  readonly athlete: HeldAthlete;
  readonly onClose: () => void;
}

/** Looks for the other record of a person, then shows what one record of both would be. */
export function JoinDialog({ athlete, onClose }: JoinDialogProps) {
  const [otherId, setOtherId] = useState<number | null>(null);
  if (otherId === null) return <FindOther athlete={athlete} onFound={setOtherId} onClose={onClose} />;
  return <JoinTwo first={athlete.athleteId} second={otherId} onClose={onClose} />;
}

const most = 8;

function FindOther({
  athlete,
  onFound,
  onClose,
}: JoinDialogProps & { readonly onFound: (id: number) => void }) {
  const { t } = useTranslation("steps");
  const whoIs = useWhoIs();
  const trpc = useTRPC();
  const [query, setQuery] = useState(athlete.name);
  const options = trpc.people.list.queryOptions({ query });
  const people = useQuery({ ...options, placeholderData: keepPreviousData }).data?.people ?? [];
  const others = people.filter(({ athleteId }) => athleteId !== athlete.athleteId).slice(0, most);
  return (
    <Dialog
      kind="question"
      onClose={onClose}
      title={t("join.title", { name: athlete.name })}
      actions={<Button onPress={onClose}>{t("cancel")}</Button>}
    >
      <TextField
        label={t("join.find")}
        type="search"
        value={query}
        onChange={setQuery}
        maxLength={200}
        autoFocus
      />
      <Stack as="ul" gap={2}>
        {others.map((other) => (
          <li key={other.athleteId}>
            <Button onPress={() => onFound(other.athleteId)}>{whoIs(other)}</Button>
          </li>
        ))}
      </Stack>
      {others.length === 0 && <p>{t("join.nobody")}</p>}
    </Dialog>
  );
}

interface JoinTwoProps {
  readonly first: number;
  readonly second: number;
  readonly onClose: () => void;
}

/** Two records beside what one of both would be; which of them says who it is can be chosen. */
function JoinTwo({ first, second, onClose }: JoinTwoProps) {
  const { t } = useTranslation("steps");
  const say = useSay();
  const trpc = useTRPC();
  const [kept, setKept] = useState<"first" | "second">("first");
  const pair = kept === "first" ? { keptId: first, goneId: second } : { keptId: second, goneId: first };
  const before = useQuery(trpc.people.beforeJoining.queryOptions(pair)).data;
  const { join, submit } = useJoin(pair, onClose);
  const isBlocked = before === undefined || before.blocked.length > 0;
  const refused = join.isError ? say(sentenceOf(join.error)) : null;
  return (
    <ConfirmDialog
      title={t("join.both")}
      cancel={t("cancel")}
      confirm={t("join.sure")}
      disabled={isBlocked}
      busy={join.isPending}
      onConfirm={() => void submit()}
      onClose={onClose}
    >
      {before?.notes.map((note) => (
        <p key={note.key + JSON.stringify(note.values)}>{say(asSentence(note))}</p>
      ))}
      {before?.blocked.map((why) => (
        <p key={why.key + JSON.stringify(why.values)} role="alert" className="strong">
          {say(asSentence(why))}
        </p>
      ))}
      <Choice
        label={t("join.keep")}
        options={(["first", "second"] as const).map((value) => ({ value, label: t(`join.${value}`) }))}
        value={kept}
        onChange={setKept}
      />
      {before !== undefined && <BothRecords before={before} />}
      <p>{t("join.consents")}</p>
      {refused !== null && <p role="alert">{refused}</p>}
    </ConfirmDialog>
  );
}

function useJoin(pair: { readonly keptId: number; readonly goneId: number }, onClose: () => void) {
  const trpc = useTRPC();
  const [, go] = useLocation();
  const { ask } = useInitials();
  // One for as long as the question stands, so that pressing twice joins once.
  const [stepId] = useState(() => crypto.randomUUID());
  const join = useMutation(
    trpc.people.join.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess() {
        tell({ tone: "done", sentence: { key: "steps:join.done" } });
        onClose();
        go(`/athletes/${pair.keptId}`);
      },
    }),
  );
  async function submit(): Promise<void> {
    const by = await ask();
    if (by !== null && !join.isPending) join.mutate({ ...pair, stepId, by });
  }
  return { join, submit };
}
