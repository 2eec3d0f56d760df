import { useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import type { LengthUnit } from "../../../electron/domain/tests/protocol.ts";
import { useTRPC } from "../../app/client.tsx";
import { Button } from "../../parts/controls/Button.tsx";
import { Dialog } from "../../parts/controls/Dialog.tsx";
import { Stack } from "../../parts/flow/Stack.tsx";
import { Answer } from "../../parts/layout/Answer.tsx";
import { Tag } from "../../parts/marks/Tag.tsx";
import { useWriteSeen } from "../../tests/seen.ts";
import { useWriteTime } from "../../words/dates.ts";
import css from "./HistoryDialog.module.css";
import type { AttemptView } from "./types.ts";

interface HistoryDialogProps {
  readonly attempt: AttemptView;
  readonly lengths: LengthUnit;
  readonly onClose: () => void;
}

/** Lists all versions of one attempt, oldest first: nothing is ever overwritten. */
export function HistoryDialog({ attempt, lengths, onClose }: HistoryDialogProps) {
  const { t } = useTranslation("station");
  const trpc = useTRPC();
  const query = useQuery(trpc.station.history.queryOptions({ attemptId: attempt.attemptId }));
  const { bib, name } = attempt.who;
  return (
    <Dialog
      onClose={onClose}
      title={t("history.title", { bib, name })}
      actions={
        <Button hint="Esc" onPress={onClose} autoFocus>
          {t("history.close")}
        </Button>
      }
    >
      <Answer query={query}>
        {(chain) => (
          <Stack as="ol">
            {chain.map((link) => (
              <Link key={link.attempt.attemptId} link={link.attempt} lengths={lengths} />
            ))}
          </Stack>
        )}
      </Answer>
    </Dialog>
  );
}

function Link({ link, lengths }: { readonly link: AttemptView; readonly lengths: LengthUnit }) {
  const { t } = useTranslation("station");
  const writeSeen = useWriteSeen();
  const writeTime = useWriteTime();
  const by = { by: link.by, time: writeTime(link.at) };
  return (
    <Stack as="li" gap={1} align="start" className={css.link} data-void={link.void !== null}>
      <p className={`lead strong ${css.seen}`}>{writeSeen(link.test, link.seen, lengths)}</p>
      <p>
        {t("history.for", { bib: link.who.bib, name: link.who.name })},{" "}
        {link.source === "sheet" ? t("history.bySheet", by) : t("history.by", by)}
      </p>
      {link.note !== "" && <p>{link.note}</p>}
      {link.void === null ? (
        <Tag tone="go">{t("history.stands")}</Tag>
      ) : (
        <p className={css.void}>{t("history.void", { ...link.void, time: writeTime(link.void.at) })}</p>
      )}
    </Stack>
  );
}
