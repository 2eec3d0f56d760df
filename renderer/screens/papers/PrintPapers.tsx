import { usePaperTitle, useReady, useType } from "../../app/ready.ts";
import { type Paper, paperNamed } from "../../app/saving.ts";
import { OnePage } from "./PaperPages.tsx";
import { pagesOf } from "./pages.ts";
import { usePapers, useWhatText, useWhoText } from "./usePapers.ts";
import { type What, type Who, whats, whoNamed } from "./which.ts";

interface PrintPapersProps {
  readonly what: string;
  readonly who: string;
  readonly paper: string;
}

/** The papers alone, as they are printed. An address that names none shows nothing, and never gets ready. */
export function PrintPapers({ what, who, paper }: PrintPapersProps) {
  const kind = whats.find((each) => each === what);
  const whom = whoNamed(who);
  const size = paperNamed(paper);
  return kind !== undefined && whom !== null && size !== undefined && <Pile {...{ kind, whom, size }} />;
}

interface PileProps {
  readonly kind: What;
  readonly whom: Who;
  readonly size: Paper;
}

function Pile({ kind, whom, size }: PileProps) {
  const { all } = usePapers();
  const type = useType(all !== null);
  const whatText = useWhatText();
  const whoText = useWhoText();
  const title = all === null ? null : `${whatText(kind)}, ${all.day.title}`;
  usePaperTitle(title);
  useReady(all !== null && type);
  if (all === null) return null;
  const { papers, ...rest } = all;
  return (
    <main>
      {pagesOf(papers, kind, whom, size).map((page, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: pages have no names, and never change places
        <OnePage key={index} page={page} size={size} who={whoText(papers, whom)} {...rest} />
      ))}
    </main>
  );
}
