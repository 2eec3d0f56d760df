import { useMutation } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { tell } from "../../app/messages.ts";
import { LinkButton } from "../../parts/controls/Button.tsx";
import { Choice } from "../../parts/controls/Choice.tsx";
import { Panel } from "../../parts/layout/Panel.tsx";
import type { AthletePage } from "./types.ts";

interface Agreed {
  readonly board: AthletePage["board"];
  readonly share: boolean;
  readonly guardianConsent: boolean;
}

/** Returns the stored consents, replaced by those just chosen. */
function agreed(athlete: Agreed, chosen: { [Key in keyof Agreed]?: Agreed[Key] | undefined } = {}): Agreed {
  return {
    board: chosen.board ?? athlete.board,
    share: chosen.share ?? athlete.share,
    guardianConsent: chosen.guardianConsent ?? athlete.guardianConsent,
  };
}

/** Shows and changes the athlete's consents at any time: stored at once, and the board follows. */
export function Consents({ athlete }: { readonly athlete: AthletePage }) {
  const { t } = useTranslation("athletes");
  const trpc = useTRPC();
  const { athleteId, asked, mayBeUnder18 } = athlete;
  const keep = useMutation(
    trpc.people.setConsent.mutationOptions({
      onSuccess: () => tell({ tone: "done", sentence: { key: "athletes:consents.kept" } }),
    }),
  );
  // The new choice is shown until the answer comes.
  const now = keep.isPending ? agreed(athlete, keep.variables) : agreed(athlete);
  function change(change: Partial<Agreed>): void {
    const { guardianConsent, ...both } = { ...now, ...change };
    keep.mutate({ athleteId, ...both, ...(mayBeUnder18 && { guardianConsent }) });
  }
  return (
    <Panel title={t("consents.title")}>
      {!asked && <p>{t("consents.notAsked")}</p>}
      <Choice
        label={t("consents.board")}
        options={[
          { value: "hidden", label: t("consents.notAtAll") },
          { value: "bib", label: t("consents.byBib") },
          { value: "name", label: t("consents.byName") },
        ]}
        value={now.board}
        onChange={(board) => change({ board })}
      />
      <Choice
        label={t("consents.share")}
        options={[
          { value: "no", label: t("consents.no") },
          { value: "yes", label: t("consents.yes") },
        ]}
        value={now.share ? "yes" : "no"}
        onChange={(chosen) => change({ share: chosen === "yes" })}
      />
      {mayBeUnder18 && (
        <Choice
          label={t("consents.guardian")}
          options={[
            { value: "no", label: t("consents.notSeen") },
            { value: "yes", label: t("consents.seen") },
          ]}
          value={now.guardianConsent ? "yes" : "no"}
          onChange={(chosen) => change({ guardianConsent: chosen === "yes" })}
        />
      )}
      <div>
        <LinkButton to={`/check-in/${athleteId}`}>{t("who.atTable")}</LinkButton>
      </div>
    </Panel>
  );
}
