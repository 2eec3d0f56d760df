import { useDaySheets } from "../../app/daySheets.ts";
import { usePaperTitle, useReady, useType } from "../../app/ready.ts";
import { type Paper, paperNamed } from "../../app/saving.ts";
import css from "./PrintPage.module.css";
import { Sheet } from "./Sheet.tsx";
import { sheetsOf, type WhichSheets, whiches } from "./sheets.ts";
import { useSheetTitle } from "./useSheetTitle.ts";

/** Lays the pages out for paper, without the desk's frame; an address that names none renders nothing. */
export function PrintPage({ which, paper }: { readonly which: string; readonly paper: string }) {
  const chosen = whiches.find((each) => each === which);
  const size = paperNamed(paper);
  return chosen !== undefined && size !== undefined && <Pages which={chosen} paper={size} />;
}

function Pages({ which, paper }: { readonly which: WhichSheets; readonly paper: Paper }) {
  const { sheets } = useDaySheets();
  const type = useType(sheets !== null);
  const titleOf = useSheetTitle();
  const title = sheets === null ? null : `${titleOf(which)}, ${sheets.day.title}`;
  usePaperTitle(title);
  useReady(sheets !== null && type);
  if (sheets === null) return null;
  return (
    <main className={css.pages}>
      {sheetsOf(which).map((name) => (
        <Sheet key={name} name={name} paper={paper} {...sheets} />
      ))}
    </main>
  );
}
