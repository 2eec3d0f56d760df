/**
 * Refuses what is dragged into the window, wherever no field takes it: a file that is let go of anywhere else would be
 * opened by the browser in place of the page.
 */
export function refuseStrayDrops(): void {
  for (const type of ["dragover", "drop"] as const) {
    window.addEventListener(type, (event) => {
      // A field that takes files has said so by now.
      if (event.defaultPrevented) return;
      event.preventDefault();
      if (event.dataTransfer !== null) event.dataTransfer.dropEffect = "none";
    });
  }
}
