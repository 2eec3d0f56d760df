import { type DragEvent, useState } from "react";

/** Makes an element, over which the props are spread, accept a dropped file; `data-over` while one hangs there. */
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
