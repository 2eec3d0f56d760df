import type { Sentence } from "../../domain/words.ts";

/**
 * Everything the desk's page can ask of the shell: only things a web page can't do. The page finds it at
 * `window.bridge`. The big screen has no bridge. Every method resolves; an expected failure is a value, never a
 * rejection.
 */
export interface Bridge {
  /** Asks where to save and writes the whole file or nothing. */
  saveFile(file: FileToSave): Promise<SaveOutcome>;
  /** Asks where to save, lays the page out on paper and writes it as a PDF, whole or not at all. */
  savePdf(page: PageToSave): Promise<SaveOutcome>;
  /** Lays the page out on paper and opens the system's print dialog; resolves when that is closed. */
  print(page: PageToPrint): Promise<PrintOutcome>;
  /** Returns the progress of `savePdf` or `print`, once there is a place to save to; null when neither is under way. */
  paperProgress(): Promise<PaperProgress | null>;
  /** Stops `savePdf` and `print`, which then resolve with `cancelled`; nothing is written. */
  cancelPaper(): Promise<void>;
  /** Asks for a sheet and reads it; null when the person cancels. */
  openSheet(): Promise<OpenedSheet | RefusedSheet | null>;
  /** Opens the big screen's window, or brings it to the front if open. */
  openBoard(): Promise<void>;
  closeBoard(): Promise<void>;
  boardOpen(): Promise<boolean>;
  displays(): Promise<DisplayInfo[]>;
  /** Asks for the folder or stick of the second backups, and makes one there. */
  chooseBackupFolder(): Promise<FolderOutcome>;
  /** Returns a report for help, to be read before it is saved. Nothing is sent. */
  report(): Promise<ReportFile[]>;
}

/** A text file of the report. */
export interface ReportFile {
  readonly name: string;
  readonly text: string;
}

export interface FileToSave {
  /** A bare file name with its extension, for example `bundle.zip`: no folder, at most 120 characters. */
  readonly suggestedName: string;
  readonly bytes: Uint8Array;
}

export type SaveOutcome =
  | { readonly saved: true; readonly name: string }
  | { readonly saved: false; readonly why: "cancelled" | "no-space" | "not-allowed" | "failed" };

/** The papers for page layout; `-two`: two upright halves side by side on a landscape sheet. */
export type PrintPaper = "a4" | "letter" | "a5" | "half-letter" | "a4-two" | "letter-two";

/** The progress of a paper job: pages are laid out and counted one by one, then all written or printed. */
export interface PaperProgress {
  readonly phase: "pages" | "file";
  /** Items laid out, such as cards; 0 of 0 for a page that does not count. */
  readonly done: number;
  readonly total: number;
}

export interface PageToPrint {
  /**
   * A print page of the desk without its paper, for example `/print/instructions/core`: the page shown is
   * `app://desk/#/print/instructions/core/a4`. It has to call `useReady` once its layout is complete.
   */
  readonly path: string;
  readonly paper: PrintPaper;
}

export interface PageToSave extends PageToPrint {
  /** See {@link FileToSave}. */
  readonly suggestedName: string;
}

export type PrintOutcome =
  | { readonly printed: true }
  /** `failed`: no printer answered, or the page did not get ready in time. */
  | { readonly printed: false; readonly why: "cancelled" | "failed" };

export interface OpenedSheet {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** `too-big`: over {@link largestSheet}, nothing of it was read. `unreadable`: not a file, or not readable. */
export interface RefusedSheet {
  readonly name: string;
  readonly refused: "too-big" | "unreadable";
}

/** `trouble` is the reason why the folder can't be used; null when the person cancelled. */
export type FolderOutcome =
  | { readonly chosen: true }
  | { readonly chosen: false; readonly trouble: Sentence | null };

export interface DisplayInfo {
  readonly id: number;
  /** The system's name for it; may be empty. */
  readonly label: string;
  /** Size in device-independent pixels. */
  readonly width: number;
  readonly height: number;
  readonly primary: boolean;
}

/** Largest sheet that is read, in bytes (20 MB). */
export const largestSheet = 20 * 1024 * 1024;
