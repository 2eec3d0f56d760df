import { type DragEvent, useState } from "react";

/**
 * Makes an element accept a dropped file: spread the returned props over it; `data-over` is set while a file hangs over
 * it.
 */
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
