/**
 * Where the keyboard is, and where it goes when its place is gone.
 *
 * A dialog, a menu, a notice or a form that opens in place is visited: what
 * had the focus before gets it back when the visited place goes. Anything else
 * that goes while it has the focus (a button that did its work, a bench that
 * was left) leaves the keyboard to the drawing: the chart, the piece, the
 * pages. So the focus is never nowhere, but where a person pressed on nothing.
 */

/** What shortcuts without Ctrl belong to: it carries `data-drawing`. */
const DRAWING = '[data-drawing]';
/** Places that are visited; forms that open in place carry `data-visited`. */
const VISITED = 'dialog, [popover], [data-visited]';

/**
 * True for the chart, the piece or the pages, which take single keys. What is
 * typed while a bench is still coming up is meant for its drawing.
 */
export function isInDrawing(target: EventTarget | null): boolean {
  if (isOwed && document.activeElement === document.body) return true;
  return target instanceof Element && target.closest(DRAWING) !== null;
}

/** A button pressed with the mouse leaves the keyboard with the drawing, as a menu does. For `onmousedown`. */
export function leaveFocusInDrawing(event: MouseEvent): void {
  const isButton = event.target instanceof Element && event.target.closest('button') !== null;
  if (isButton && isInDrawing(document.activeElement)) event.preventDefault();
}

/** What has the focus, or had it last. */
let last: HTMLElement | null = null;
/** For each place that was visited, what had the focus before. */
let origins = new WeakMap<Element, HTMLElement | null>();
/** The keyboard is nowhere, and a drawing is to take it as soon as there is one. */
let isOwed = false;

const placeOf = (element: Element | null): Element | null => element?.closest(VISITED) ?? null;

function canTakeFocus(element: HTMLElement): boolean {
  if (!element.isConnected || element.matches(':disabled') || element.closest('[inert]') !== null) return false;
  const modal = openDialog();
  return element.checkVisibility() && (modal === null || modal.contains(element));
}

function openDialog(): HTMLDialogElement | null {
  return [...document.querySelectorAll<HTMLDialogElement>('dialog:modal')].at(-1) ?? null;
}

/** Where somebody came from who was in `element`, through as many places as are gone; null if all of it is. */
function originOf(element: HTMLElement): HTMLElement | null {
  const place = placeOf(element);
  const origin = place === null ? null : (origins.get(place) ?? null);
  return origin === null || canTakeFocus(origin) ? origin : originOf(origin);
}

/** Remembers where a place was entered from. Coming back from something inside it is no entering. */
function enter(place: Element, from: HTMLElement | null): void {
  // A dialog lives for one visit.
  if (place instanceof HTMLDialogElement && origins.has(place)) return;
  if (from !== null && (place.contains(from) || isWithin(from, place))) return;
  origins.set(place, from);
}

/** True if `from` lies in a place that was entered from `place`; else two places could name each other for ever. */
function isWithin(from: HTMLElement, place: Element): boolean {
  for (let at = placeOf(from); at !== null; at = placeOf(origins.get(at) ?? null)) if (at === place) return true;
  return false;
}

function note(event: FocusEvent): void {
  const to = event.target as HTMLElement;
  const place = placeOf(to);
  if (place !== null && place !== placeOf(last)) {
    const from = event.relatedTarget as HTMLElement | null;
    // With nothing before it, the place came up after another one went, or after a press on nothing.
    enter(place, from ?? (last?.isConnected === false ? last : null));
  }
  last = to;
  isOwed = false;
}

/** Gives the focus back if what had it is gone. Called for every change of the page; a dialog calls it as it goes. */
export function giveBackFocus(): void {
  const active = document.activeElement;
  if (active !== null && active !== document.body && active.matches(':not(:disabled)')) return;
  if (last !== null && canTakeFocus(last)) return;
  if (last === null && !isOwed) return;
  const wanted = (last && originOf(last)) ?? openDialog() ?? document.querySelector<HTMLElement>(DRAWING);
  // The next bench may still be on its way.
  isOwed = wanted === null;
  // A drawing may be higher than the window: what is read above it stays in sight.
  wanted?.focus({ preventScroll: wanted.matches(DRAWING) });
}

/** Keeps the focus for as long as the window lives; the drawing has it first. Returns a function that stops. */
export function keepFocus(): () => void {
  [last, isOwed] = [null, true];
  origins = new WeakMap();
  document.addEventListener('focusin', note);
  const observer = new MutationObserver(giveBackFocus);
  observer.observe(document.body, {
    subtree: true,
    childList: true,
    attributeFilter: ['disabled', 'hidden', 'inert', 'open', 'data-drawing'],
  });
  giveBackFocus();
  return () => {
    document.removeEventListener('focusin', note);
    observer.disconnect();
  };
}
