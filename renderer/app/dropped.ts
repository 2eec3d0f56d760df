import { type DragEvent, useState } from "react";

/** Makes an element a place to drop a file on: spread what it answers over it; `data-over` says that something hangs above it. */
export function useDropped(onFile: (file: File) => void) {
  const [over, setOver] = useState(false);
  return {
    "data-over": over,
    onDragOver(event: DragEvent) {
      event.preventDefault();
      setOver(true);
    },
    onDragLeave: () => setOver(false),
    onDrop(event: DragEvent) {
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer.files[0];
      if (file !== undefined) onFile(file);
    },
  };
}
