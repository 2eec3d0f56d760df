import { useState } from "react";
import { useTranslation } from "react-i18next";
import { useLocation } from "wouter";
import { useKeys } from "../../app/keys.ts";
import { useStanding } from "../../app/standing.tsx";
import { Button } from "../controls/Button.tsx";
import { Dialog } from "../controls/Dialog.tsx";
import { KeyHint } from "../controls/KeyHint.tsx";
import { UnlockForm } from "../controls/UnlockForm.tsx";
import { useNameOfPost } from "./HandedOver.tsx";
import css from "./HideBoard.module.css";

/** At the foot of every screen: the organiser locks or hands over here, a volunteer returns the desk by PIN. */
export function LockKey() {
  const { t } = useTranslation("lock");
  const { post } = useStanding();
  const [, go] = useLocation();
  const [asking, setAsking] = useState(false);
  const isOrganiser = post.role === "organiser";
  const name = useNameOfPost(post);
  const press = () => (isOrganiser ? go("/lock") : setAsking(true));
  useKeys({ "Alt+U": press }, { always: true });
  return (
    <>
      <button type="button" className={css.hide} onClick={press}>
        <KeyHint keys="Alt+U" does={isOrganiser ? t("key.lock") : t("key.unlock", { to: name })} />
      </button>
      <Dialog
        open={asking && !isOrganiser}
        onClose={() => setAsking(false)}
        kind="question"
        title={t("unlock.title")}
      >
        <p>{t("unlock.from", { to: name })}</p>
        <UnlockForm
          onOpen={() => setAsking(false)}
          beside={<Button onPress={() => setAsking(false)}>{t("unlock.stay")}</Button>}
        />
      </Dialog>
    </>
  );
}
