import type { MouseEvent, PointerEvent } from "react";

/**
 * Returns press handlers: a press is the finger's coming down, with its time; a click comes only from keys and
 * assistive technology.
 */
export function onDown(onPress: (timeStamp: number) => void) {
  return {
    onPointerDown(event: PointerEvent<HTMLElement>) {
      if (event.button === 0 && event.isPrimary !== undefined) onPress(event.nativeEvent.timeStamp);
    },
    /** The focus stays where it is: the next key is for the screen, not for the touched element. */
    onMouseDown(event: MouseEvent<HTMLElement>) {
      event.preventDefault();
    },
    onClick(event: { readonly detail: number; readonly nativeEvent: Event }) {
      if (event.detail === 0) onPress(event.nativeEvent.timeStamp);
    },
  };
}
