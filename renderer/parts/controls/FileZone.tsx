import { useRef } from "react";
import { bridge } from "../../app/bridge.ts";
import { useDropped } from "../../app/dropped.ts";
import { Button } from "./Button.tsx";
import css from "./FileZone.module.css";

interface FileZoneProps {
  readonly title: string;
  readonly button: string;
  readonly note: string;
  /** The files that the browser's own dialog offers, in the form of an input's attribute. */
  readonly accept: string;
  /** large: the main thing on its screen, so that its button has the focus. */
  readonly size?: "normal" | "large";
  readonly onFile: (name: string, content: Blob) => void;
  readonly onRefused: (name: string, why: "too-big" | "unreadable") => void;
}

/** A zone to choose a file by the system's dialog, or to drop one. */
export function FileZone(props: FileZoneProps) {
  const { title, button, note, accept, size = "normal", onFile, onRefused } = props;
  const input = useRef<HTMLInputElement>(null);
  const zone = useDropped((file) => onFile(file.name, file));

  async function choose(): Promise<void> {
    if (bridge === null) return input.current?.click();
    const opened = await bridge.openSheet();
    if (opened === null) return;
    if ("refused" in opened) return onRefused(opened.name, opened.refused);
    onFile(opened.name, new Blob([new Uint8Array(opened.bytes)]));
  }

  return (
    <div className={css.zone} data-size={size} {...zone}>
      <p className={`figures ${css.title}`}>{title}</p>
      <Button kind="primary" size="large" autoFocus={size === "large"} onPress={() => void choose()}>
        {button}
      </Button>
      <p className={css.note}>{note}</p>
      <input
        ref={input}
        className="unseen"
        type="file"
        accept={accept}
        tabIndex={-1}
        aria-hidden="true"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          if (file !== undefined) onFile(file.name, file);
          event.currentTarget.value = "";
        }}
      />
    </div>
  );
}
