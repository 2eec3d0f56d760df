import { useMutation, useQuery } from "@tanstack/react-query";
import { useTranslation } from "react-i18next";
import { bridge } from "../app/bridge.ts";
import { useTRPC } from "../app/client.tsx";
import { useKeys } from "../app/keys.ts";
import { Button } from "./Button.tsx";

/** Opens the hall's board; blanks it at once, and shows it again. */
export function BoardTools() {
  const { t } = useTranslation("common");
  const trpc = useTRPC();
  const hidden = useQuery(trpc.board.hidden.queryOptions()).data?.hidden === true;
  const { mutate } = useMutation(trpc.board.hide.mutationOptions());
  const turn = () => mutate({ hidden: !hidden });
  useKeys({ "Alt+H": turn });
  return (
    <>
      <Button onPress={() => void bridge?.openBoard()}>{t("frame.openBoard")}</Button>
      <Button hint="Alt+H" kind={hidden ? "primary" : "quiet"} onPress={turn}>
        {t(hidden ? "frame.showBoard" : "frame.hideBoard")}
      </Button>
    </>
  );
}
