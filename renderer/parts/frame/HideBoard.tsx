import { useMutation, useQuery } from "@tanstack/react-query";
import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useKeys } from "../../app/keys.ts";
import { isDevice } from "../../app/table.ts";
import { ConfirmDialog } from "../controls/ConfirmDialog.tsx";
import { KeyHint } from "../controls/KeyHint.tsx";
import css from "./HideBoard.module.css";

/**
 * Blanks the big screen, or shows it again: at the foot of every screen, since it is urgent. The table does it at once; a
 * device, whose foot lies under many fingers and far from the screen, asks first.
 */
export function HideBoard() {
  const { t } = useTranslation("common");
  const trpc = useTRPC();
  const hidden = useQuery(trpc.board.hidden.queryOptions()).data?.hidden === true;
  const [isAsked, setAsked] = useState(false);
  const { mutate, isPending } = useMutation(trpc.board.hide.mutationOptions());
  const turn = () => (isDevice && !hidden ? setAsked(true) : mutate({ hidden: !hidden }));
  useKeys({ "Alt+H": turn }, { always: true });
  return (
    <>
      <button type="button" className={css.hide} data-hidden={hidden} onClick={turn}>
        <KeyHint keys="Alt+H" /> {t(hidden ? "frame.showBoard" : "frame.hideBoard")}
      </button>
      {isAsked && (
        <ConfirmDialog
          title={t("frame.hideAsk")}
          cancel={t("frame.hideNo")}
          confirm={t("frame.hideBoard")}
          busy={isPending}
          onClose={() => setAsked(false)}
          onConfirm={() => {
            setAsked(false);
            mutate({ hidden: true });
          }}
        >
          <p>{t("frame.hideWhat")}</p>
        </ConfirmDialog>
      )}
    </>
  );
}
