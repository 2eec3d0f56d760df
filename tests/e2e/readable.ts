import type { Page } from "@playwright/test";
import { computed, contrast } from "../checks/wcag.ts";

/** A text of a page with the colours that it is really seen in. */
interface SeenText {
  readonly text: string;
  readonly colour: string;
  readonly ground: string;
  /** In px. */
  readonly size: number;
}

/** All texts in sight with their colour and what they stand on: the first ground of their own or of what is around them. */
function textsOf(page: Page): Promise<SeenText[]> {
  return page.evaluate(() => {
    const seen: SeenText[] = [];
    const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) {
      const element = texts.currentNode.parentElement;
      const text = texts.currentNode.textContent?.trim() ?? "";
      // The letter of a sign is drawn on its own shape; the unseen is only read out.
      if (element === null || text === "" || element.closest(".unseen, svg") !== null) continue;
      if (!element.checkVisibility({ opacityProperty: true, visibilityProperty: true })) continue;
      const { color: colour, fontSize } = getComputedStyle(element);
      seen.push({ text, colour, ground: groundOf(element), size: Number.parseFloat(fontSize) });
    }
    return seen;

    function groundOf(element: Element): string {
      for (let at: Element | null = element; at !== null; at = at.parentElement) {
        const { backgroundColor } = getComputedStyle(at);
        if (!backgroundColor.endsWith(", 0)")) return backgroundColor;
      }
      return "rgb(255, 255, 255)";
    }
  });
}

/** Texts of at least `from` px that are read at less than `least` : 1, as "ratio text"; and how many were looked at. */
export async function faintTexts(page: Page, least: number, from = 0) {
  const texts = (await textsOf(page)).filter(({ size }) => size >= from);
  const faint = texts.flatMap(({ text, colour, ground }) => {
    const ratio = contrast(computed(colour), computed(ground));
    return ratio < least ? `${ratio.toFixed(2)} ${text} (${colour} on ${ground})` : [];
  });
  return { faint, looked: texts.length };
}

/** What moves on a page just now: animations that run, those that only jump from one step to the next left out. */
export function movingOn(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    document.getAnimations().flatMap((animation) => {
      const effect = animation.effect as KeyframeEffect;
      const duration = Number(effect.getComputedTiming().duration);
      const jumps = effect.getKeyframes().every(({ easing }) => easing.startsWith("steps("));
      if (animation.playState !== "running" || duration === 0 || jumps) return [];
      const name = animation instanceof CSSAnimation ? animation.animationName : "a transition";
      return `${name} of ${effect.target?.className} for ${duration} ms`;
    }),
  );
}

/** Counts from now on what a screen reader is given to say without being asked; `said` reads what it was. */
export async function listenTo(page: Page): Promise<{ said(): Promise<string[]> }> {
  await page.evaluate(() => {
    const said: string[] = [];
    const live =
      '[role="status"], [role="alert"], [role="log"], [aria-live="polite"], [aria-live="assertive"]';
    const note = (node: Node) => {
      const element = node instanceof Element ? node : node.parentElement;
      const region = element?.closest(live);
      if (region) said.push(region.textContent ?? "");
    };
    new MutationObserver((changes) => {
      for (const { target } of changes) note(target);
    }).observe(document.body, { subtree: true, childList: true, characterData: true });
    Object.assign(window, { saidByPage: () => said.splice(0) });
  });
  return {
    said: () => page.evaluate(() => (window as unknown as { saidByPage: () => string[] }).saidByPage()),
  };
}
