import { type SyntheticEvent, useEffect, useRef } from "react";
import { createPortal } from "react-dom";
import { useTranslation } from "react-i18next";
import { useReady } from "../../app/ready.ts";
import { useStanding } from "../../app/standing.tsx";
import { UnlockForm } from "../../parts/controls/UnlockForm.tsx";
import { BareTape } from "../../parts/frame/TapeNav.tsx";
import css from "./LockCover.module.css";

/**
 * Covers everything of a locked desk, dialogs too: the browser's own top layer makes the rest of the page inert. Text
 * typed there is still there once the PIN is given.
 */
export function LockCover() {
  const { t } = useTranslation(["lock", "common"]);
  const { unreadable, folder } = useStanding();
  const dialog = useRef<HTMLDialogElement>(null);
  useReady(true);
  useEffect(() => {
    const title = document.title;
    document.title = `${t("cover.title")} · ${t("common:name")}`;
    return () => {
      document.title = title;
    };
  }, [t]);
  useEffect(() => dialog.current?.showModal(), []);

  function stay(event: SyntheticEvent<HTMLDialogElement>): void {
    event.preventDefault();
    // A second Escape closes it all the same.
    if (dialog.current?.open === false) dialog.current.showModal();
  }
  return createPortal(
    <dialog
      ref={dialog}
      className={css.cover}
      aria-labelledby="locked"
      data-react-aria-top-layer="true"
      onCancel={stay}
      onClose={stay}
    >
      <BareTape />
      <main className={css.sheet}>
        <h1 id="locked">{t("cover.title")}</h1>
        <p>{unreadable ? t("cover.unreadable", { folder }) : t("cover.lead")}</p>
        {!unreadable && <UnlockForm />}
      </main>
    </dialog>,
    document.body,
  );
}
