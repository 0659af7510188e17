/** A panel that comes back is scrolled to where it was left. */
import type { Attachment } from 'svelte/attachments';
import type { PanelMemory } from './panel-memory.ts';

/**
 * For the element that scrolls, whose only child is what it holds. Parts of it
 * may come late, so it is scrolled again each time it grows, until it is there
 * or a person does something in it.
 */
export function keepsScroll(memory: PanelMemory, what: string): Attachment<HTMLElement> {
  return (panel) => {
    let wanted = memory.scrolledIn(what);
    const reach = (): void => {
      if (wanted === null) return;
      panel.scrollTop = wanted;
      if (Math.abs(panel.scrollTop - wanted) < 1) wanted = null;
    };
    const note = (): void => {
      if (wanted === null) memory.keepScroll(what, panel.scrollTop);
    };
    // Where it is never scrolled it comes back as it stands now.
    note();
    const letGo = (): void => void (wanted = null);
    const grown = new ResizeObserver(reach);
    for (const part of panel.children) grown.observe(part);
    reach();
    panel.addEventListener('scroll', note, { passive: true });
    const DOING = ['wheel', 'pointerdown', 'keydown', 'focusin'] as const;
    for (const doing of DOING) panel.addEventListener(doing, letGo, { passive: true });
    return () => {
      grown.disconnect();
      panel.removeEventListener('scroll', note);
      for (const doing of DOING) panel.removeEventListener(doing, letGo);
    };
  };
}
