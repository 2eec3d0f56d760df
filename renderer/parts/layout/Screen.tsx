import { type ReactNode, useEffect, useRef } from "react";
import { createPortal } from "react-dom";
import { useTranslation } from "react-i18next";
import { Link, useLocation } from "wouter";
import { parentOf } from "../../app/places.ts";
import { useReady } from "../../app/ready.ts";
import { mayOpen, useStanding } from "../../app/standing.tsx";
import { KeyHint } from "../controls/KeyHint.tsx";
import { Row, Stack } from "../flow/Stack.tsx";
import { useHintsPlace } from "./hints.ts";
import css from "./Screen.module.css";

interface ScreenProps {
  /** The heading (h1) in words; also the window's title. */
  readonly title: string;
  /** A test's mark before the heading. */
  readonly mark?: ReactNode;
  /** One line under the heading that says what the screen is for. */
  readonly lead?: ReactNode;
  /** Buttons at the right of the heading, at most two. */
  readonly actions?: ReactNode;
  /** The keys of this screen without a button; they appear at the bottom right. */
  readonly hints?: readonly { readonly keys: string; readonly does: string }[];
  /** paper: the usual sheet. floor: the screen lays its own papers (`Panel paper`) on the bare floor. */
  readonly ground?: "paper" | "floor";
  /** True once the screen has its data. */
  readonly ready: boolean;
  readonly children: ReactNode;
}

let firstScreen = true;

/** One screen on the sheet: the way back, the heading, the content. Every desk screen is one. */
export function Screen({
  title,
  mark,
  lead,
  actions,
  hints = [],
  ground = "paper",
  ready,
  children,
}: ScreenProps) {
  const { t } = useTranslation("common");
  const heading = useRef<HTMLHeadingElement>(null);
  const hintsPlace = useHintsPlace();
  useReady(ready);

  useEffect(() => {
    document.title = `${title} · ${t("name")}`;
  }, [title, t]);

  // After a change of screen the heading is read out and Tab continues from there; the first screen leaves focus alone.
  useEffect(() => {
    const alreadyPlaced = document.activeElement !== null && document.activeElement !== document.body;
    const insideSheet = heading.current?.closest("main")?.contains(document.activeElement) === true;
    if (!firstScreen && !(alreadyPlaced && insideSheet)) heading.current?.focus();
    firstScreen = false;
  }, []);

  return (
    <div className={css.screen} data-ground={ground}>
      <Row as="header" gap={5} lines={3} align="end" wrap between className={css.head}>
        <Stack gap={1} align="start">
          <BackLink />
          <h1 ref={heading} tabIndex={-1} className={css.title}>
            {mark}
            {title}
          </h1>
          {lead !== undefined && <p className={`quiet measure ${css.lead}`}>{lead}</p>}
        </Stack>
        {actions !== undefined && (
          <Row gap={3} wrap>
            {actions}
          </Row>
        )}
      </Row>
      {children}
      {hintsPlace !== null && createPortal(<Hints hints={hints} />, hintsPlace)}
    </div>
  );
}

/** The words of each way back. */
const backWords = {
  "/": "start",
  "/day": "day",
  "/athletes": "athletes",
  "/noise": "noise",
  "/study": "studies",
} as const;

function BackLink() {
  const { t } = useTranslation("common");
  const [path] = useLocation();
  const { post } = useStanding();
  const parent = parentOf(path);
  if (parent === null || !mayOpen(post, parent)) return null;
  return (
    <Link className={`small strong quiet ${css.back}`} href={parent}>
      <svg viewBox="0 0 12 16" aria-hidden="true" className={css.arrow}>
        <path d="M10 2 3 8l7 6" fill="none" stroke="currentColor" strokeWidth="3" />
      </svg>
      {t(`back.${backWords[parent]}`)}
    </Link>
  );
}

function Hints({ hints }: { readonly hints: NonNullable<ScreenProps["hints"]> }) {
  return hints.map((hint) => <KeyHint key={hint.keys} keys={hint.keys} does={hint.does} />);
}
