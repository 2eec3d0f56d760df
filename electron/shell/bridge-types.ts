/**
 * What the desk's page can ask of the shell: only what a web page cannot do. The page finds it at `window.bridge`.
 * The hall's board has no bridge. Every method resolves; an expected failure is a value, never a rejection.
 */
export interface Bridge {
  /** Asks where to save and writes the whole file or nothing of it. */
  saveFile(file: FileToSave): Promise<SaveOutcome>;
  /** Asks for a sheet and reads it; null when the person cancels. */
  openSheet(): Promise<OpenedSheet | RefusedSheet | null>;
  /** Opens the hall's board, or brings it to the front when it is open. */
  openBoard(): Promise<void>;
  closeBoard(): Promise<void>;
  boardOpen(): Promise<boolean>;
  displays(): Promise<DisplayInfo[]>;
}

export interface FileToSave {
  /** A bare file name with its extension, for example `bundle.zip`: no folder, at most 120 characters. */
  readonly suggestedName: string;
  readonly bytes: Uint8Array;
}

export type SaveOutcome =
  | { readonly saved: true; readonly name: string }
  | { readonly saved: false; readonly why: "cancelled" | "no-space" | "not-allowed" | "failed" };

export interface OpenedSheet {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** `too-big`: over {@link largestSheet}, nothing of it was read. `unreadable`: not a file, or it can't be read. */
export interface RefusedSheet {
  readonly name: string;
  readonly refused: "too-big" | "unreadable";
}

export interface DisplayInfo {
  readonly id: number;
  /** The name that the system gives it; may be empty. */
  readonly label: string;
  /** Size in device-independent pixels. */
  readonly width: number;
  readonly height: number;
  readonly primary: boolean;
}

/** The largest sheet that is read, in bytes (20 MB). */
export const largestSheet = 20 * 1024 * 1024;
