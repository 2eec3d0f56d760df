import { keepPreviousData, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { Button } from "../../../parts/controls/Button.tsx";
import { Dialog } from "../../../parts/controls/Dialog.tsx";
import { TextField } from "../../../parts/controls/TextField.tsx";
import { Stack } from "../../../parts/flow/Stack.tsx";
import { useWhoIs } from "../../../parts/steps/useStepWords.ts";
import type { HeldAthlete } from "../held/types.ts";
import { JoinTwo } from "./JoinTwo.tsx";

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
      open
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
