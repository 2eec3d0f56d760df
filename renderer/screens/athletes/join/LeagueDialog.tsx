import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../../app/client.tsx";
import { useInitials } from "../../../app/initials.tsx";
import { tellDone } from "../../../app/messages.ts";
import { sentenceOf } from "../../../app/trouble.ts";
import { ConfirmDialog } from "../../../parts/controls/ConfirmDialog.tsx";
import { LeagueField } from "../../../parts/people/LeagueField.tsx";
import { asSentence } from "../../../parts/sheets/sheet.ts";
import { useSay } from "../../../words/say.ts";

interface LeagueDialogProps {
  readonly league: { readonly id: number; readonly name: string };
  readonly onClose: () => void;
}

/** Another spelling for a league, or another league that its athletes go to; what would happen is said while it is typed. */
export function LeagueDialog({ league, onClose }: LeagueDialogProps) {
  const { t } = useTranslation("steps");
  const say = useSay();
  const trpc = useTRPC();
  const { ask } = useInitials();
  const [name, setName] = useState(league.name);
  const [stepId] = useState(() => crypto.randomUUID());
  const typed = name.trim();
  const isOther = typed !== "" && typed !== league.name;
  const asked = { leagueId: league.id, name: typed };
  const options = trpc.people.beforeLeague.queryOptions(asked);
  const before = useQuery({ ...options, enabled: isOther }).data;
  const change = useMutation(
    trpc.people.changeLeague.mutationOptions({
      meta: { shownByScreen: true },
      onSuccess: tellDone({ key: "steps:league.done" }, onClose),
    }),
  );
  const isReady = isOther && before !== undefined && before.blocked.length === 0;
  async function submit(): Promise<void> {
    const by = await ask();
    if (by !== null && isReady) change.mutate({ ...asked, stepId, by });
  }
  return (
    <ConfirmDialog
      title={t("league.title", { league: league.name })}
      cancel={t("cancel")}
      confirm={before?.joins == null ? t("league.rename") : t("league.join")}
      kind="primary"
      disabled={!isReady}
      busy={change.isPending}
      onConfirm={() => void submit()}
      onClose={onClose}
    >
      <LeagueField
        autoFocus
        value={name}
        onChange={setName}
        error={change.isError ? say(sentenceOf(change.error)) : null}
      />
      {isOther && before !== undefined && (
        <p role="status">
          {before.joins === null
            ? t("league.renames", { name: typed, count: before.athletes })
            : t("league.joins", { name: before.joins, count: before.athletes })}
        </p>
      )}
      {isOther &&
        before?.blocked.map((why) => (
          <p key={JSON.stringify(why.values)} role="alert" className="strong">
            {say(asSentence(why))}
          </p>
        ))}
    </ConfirmDialog>
  );
}
