/** The steps of the tour: the bench that each is on, and the place there that it is about. */
import type { tourWords } from '@shared/words/tour.ts';
import type { Bench } from '../session/session.ts';

export interface TourStep {
  readonly name: keyof typeof tourWords.steps;
  readonly bench: Bench;
  /** A selector of the place. */
  readonly place: string;
}

const DRAWING = '[data-drawing]';
const TOOLS = '[role="toolbar"][aria-orientation="vertical"]';
const PANEL = 'aside';

export const TOUR: readonly TourStep[] = [
  { name: 'draw', bench: 'motif', place: DRAWING },
  { name: 'understand', bench: 'motif', place: PANEL },
  { name: 'place', bench: 'piece', place: DRAWING },
  { name: 'mend', bench: 'piece', place: PANEL },
  { name: 'wear', bench: 'piece', place: TOOLS },
  { name: 'print', bench: 'sheet', place: DRAWING },
];

/** On the place that the tour is about now; base.css frames it. */
const MARK = 'data-toured';

/** Marks the first place for `selector`, as soon as there is one. Returns a function that takes the mark off. */
export function markPlace(selector: string): () => void {
  let marked: Element | null = null;
  const mark = (): void => {
    const place = document.querySelector(selector);
    if (place === marked) return;
    marked?.removeAttribute(MARK);
    place?.setAttribute(MARK, '');
    marked = place;
  };
  mark();
  // A bench that is gone to comes later.
  const observer = new MutationObserver(mark);
  observer.observe(document.body, { subtree: true, childList: true });
  return () => {
    observer.disconnect();
    marked?.removeAttribute(MARK);
  };
}
