import { useQuery } from "@tanstack/react-query";
import { type ReactNode, useRef, useState } from "react";
import { useTranslation } from "react-i18next";
import { useTRPC } from "../../app/client.tsx";
import { useLanguageOfPerson } from "../../app/language.ts";
import { useStanding } from "../../app/standing.tsx";
import { isDevice, isJoinedProgram } from "../../app/table.ts";
import { KeyHint } from "../controls/KeyHint.tsx";
import { HintsPlace } from "../layout/hints.ts";
import css from "./Frame.module.css";
import { FrameHead } from "./FrameHead.tsx";
import { HideBoard } from "./HideBoard.tsx";
import { LanguageChoice, OwnLanguageChoice } from "./LanguageChoice.tsx";
import { LeaveTable } from "./LeaveTable.tsx";
import { LockKey } from "./LockKey.tsx";
import { MessageStrip } from "./MessageStrip.tsx";
import { BareTape, TapeNav } from "./TapeNav.tsx";

/**
 * The one frame of the desk: the day and the initials on top, the navigation on a measuring tape, the sheet with the
 * screen, and the one place for messages at the bottom. Screens fill it with `Screen`.
 */
export function Frame({ children }: { readonly children: ReactNode }) {
  const { t } = useTranslation("common");
  const sheet = useRef<HTMLElement>(null);
  const [hints, setHints] = useState<HTMLElement | null>(null);
  const trpc = useTRPC();
  const current = useQuery(trpc.day.current.queryOptions());
  const day = current.data?.day ?? null;
  const isOrganiser = useStanding().post.role === "organiser";
  useLanguageOfPerson();

  return (
    <HintsPlace value={hints}>
      <div className={css.frame} data-day={day === null ? "none" : day.state}>
        <button type="button" className={css.skip} onClick={() => sheet.current?.focus()}>
          {t("frame.skip")}
        </button>
        <header>
          <FrameHead day={day} demo={current.data?.kind === "demo"} />
          {/* A device has one screen, and its head the room of the others. */}
          {!isDevice && (day === null ? <BareTape /> : <TapeNav />)}
        </header>
        <div className={css.room}>
          <main className={css.sheet} ref={sheet} tabIndex={-1}>
            {children}
          </main>
        </div>
        <footer className={css.foot} data-device={isDevice}>
          <MessageStrip day={`${current.data?.kind} ${day?.id}`} />
          <div className={css.hints}>
            <div className={css.own} ref={setHints} />
            {isDevice && <OwnLanguageChoice />}
            {day !== null && <HideBoard />}
            {(day !== null || !isOrganiser) && !isDevice && <LockKey />}
            {day !== null && isOrganiser && <KeyHint keys="Alt+0–9" does={t("frame.goTo")} />}
            {!isDevice && day !== null && <LanguageChoice />}
            {isJoinedProgram && <LeaveTable />}
          </div>
        </footer>
      </div>
    </HintsPlace>
  );
}
