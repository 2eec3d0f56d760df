import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useKeys } from "../../app/keys.ts";
import { KeyHint } from "../controls/KeyHint.tsx";
import css from "./HideBoard.module.css";

/** Blanks the big screen at once, or shows it again: at the foot of every screen, since it is urgent. */
export function HideBoard() {
  const { t } = useTranslation("common");
  const trpc = useTRPC();
  const hidden = useQuery(trpc.board.hidden.queryOptions()).data?.hidden === true;
  const { mutate } = useMutation(trpc.board.hide.mutationOptions());
  const turn = () => mutate({ hidden: !hidden });
  useKeys({ "Alt+H": turn }, { always: true });
  return (
    <button type="button" className={css.hide} data-hidden={hidden} onClick={turn}>
      <KeyHint keys="Alt+H" /> {t(hidden ? "frame.showBoard" : "frame.hideBoard")}
    </button>
  );
}
