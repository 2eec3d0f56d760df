import type { HeldTest } from "../../app/daySheets.ts";
import type { Paper } from "../../app/saving.ts";
import { BadgePage, BibPage } from "./CutPages.tsx";
import type { Page } from "./pages.ts";
import { RecordPage } from "./RecordPage.tsx";

/** All that the papers of a day are made of, besides the people. */
export interface PaperDay {
  readonly day: { readonly title: string; readonly date: string };
  readonly tests: readonly HeldTest[];
  /** For whom they are, in words. */
  readonly who: string;
}

interface OnePageProps extends PaperDay {
  readonly page: Page;
  readonly size: Paper;
}

/** One sheet of paper, the same on the screen as in print. */
export function OnePage({ page, day, tests, who, size }: OnePageProps) {
  switch (page.kind) {
    case "bibs":
      return <BibPage bibs={page.bibs} size={size} />;
    case "badges":
      return <BadgePage people={page.people} size={size} />;
    case "record":
      return (
        <RecordPage
          record={page}
          day={day}
          who={who}
          parameters={tests.find(({ test }) => test === page.test)?.parameters}
          size={size}
        />
      );
  }
}
