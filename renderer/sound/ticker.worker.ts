/** Says "now" a few times a second, from a thread of its own: a page's own timers sleep while its window is hidden. */

const everyMs = 125;

setInterval(() => self.postMessage(null), everyMs);
