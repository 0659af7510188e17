/**
 * Moving about by pointer: the wheel scrolls, Ctrl+wheel and pinch zoom at the
 * pointer, dragging pans unless a tool takes the drag. A pointer that only
 * hovers reports where it is.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A drag that a tool has taken. */
export interface Held {
  /** Where the pointer went since the last call, oldest first; there may be several samples a frame. */
  move(points: readonly Point[]): void;
  end(): void;
  /** Takes back what was done: the press was the first finger of two, or the platform took it away. */
  giveUp(): void;
}

/** Pixels are those of the element. */
export interface Moving {
  panBy(dx: number, dy: number): void;
  zoomAt(factor: number, x: number, y: number): void;
  /** False: there is nowhere to pan to, and the wheel scrolls what is around. Always, if it is left out. */
  canPan?(): boolean;
  /** Null when the pointer has left. */
  hover(at: Point | null): void;
  /** Pressed and let go without moving. */
  pick?(x: number, y: number): void;
  /** Takes a press of the main button for a tool; null lets it pan. */
  hold?(at: Point, event: PointerEvent): Held | null;
  /** Takes a press of the right button, or of the eraser of a pen; null does nothing. */
  erase?(at: Point): Held | null;
}

/** What `PointerEvent.button` says (Pointer Events, 5.1.1): the right button, and the eraser of a pen. */
const RIGHT = 2;
const ERASER = 5;

/** Movement in pixels up to which a press is no drag. */
export const SLACK = 4;
const WHEEL_ZOOM = 0.002;
/** Pixels a line or a page of a wheel that does not count in pixels. */
const WHEEL_UNITS = [1, 16, 400];

/** Makes `element` move; returns a function that stops it. */
export function moveByPointer(element: HTMLElement, moving: Moving): () => void {
  const down = new Map<number, Point>();
  let moved = 0;
  let heldByPen = false;
  let held: { readonly pointer: number; readonly by: Held } | null = null;
  const at = (event: PointerEvent | WheelEvent): Point => {
    const { left, top } = element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const letGo = (): void => {
    held?.by.end();
    held = null;
    heldByPen = false;
  };
  const giveUp = (): void => {
    held?.by.giveUp();
    held = null;
    heldByPen = false;
  };

  const wheel = (event: WheelEvent): void => {
    const zooms = event.ctrlKey || event.metaKey;
    if (!zooms && moving.canPan?.() === false) return;
    event.preventDefault();
    const unit = WHEEL_UNITS[event.deltaMode] ?? 1;
    const { x, y } = at(event);
    if (zooms) return moving.zoomAt(Math.exp(-event.deltaY * unit * WHEEL_ZOOM), x, y);
    const [dx, dy] = event.shiftKey && event.deltaX === 0 ? [event.deltaY, 0] : [event.deltaX, event.deltaY];
    moving.panBy(-dx * unit, -dy * unit);
  };
  const pointerdown = (event: PointerEvent): void => {
    const erases = event.button === RIGHT || event.button === ERASER;
    if (event.button > 1 && !(erases && moving.erase)) return;
    // By what was pressed, not by the element around it: Konva hears the mouse there.
    (event.target as Element).setPointerCapture(event.pointerId);
    // A palm that rests beside the pen neither draws nor moves the chart.
    if (event.pointerType === 'touch' && heldByPen) return;
    // Two fingers pan and zoom; what the first one drew before the second came down was not meant.
    giveUp();
    if (down.size === 0) {
      moved = 0;
      const takes = event.button === 0 ? moving.hold : erases ? moving.erase : undefined;
      const by = takes?.(at(event), event) ?? null;
      if (by) held = { pointer: event.pointerId, by };
      heldByPen = by !== null && event.pointerType === 'pen';
    }
    // A right button that erases nothing does not pan either.
    if (!erases || held) down.set(event.pointerId, at(event));
  };
  // The middle button would start the browser's own scrolling. The press itself goes on to be a
  // mouse event: one that is prevented has no release that could be kept from pasting.
  const mousedown = (event: MouseEvent): void => {
    if (event.button === 1) event.preventDefault();
  };
  // The menu of the browser would come up over what was erased.
  const contextmenu = (event: MouseEvent): void => {
    if (moving.erase && event.button === RIGHT) event.preventDefault();
  };
  const pointermove = (event: PointerEvent): void => {
    const now = at(event);
    const before = down.get(event.pointerId);
    if (!before || held?.pointer === event.pointerId) moving.hover(now);
    if (!before) return;
    moved += Math.hypot(now.x - before.x, now.y - before.y);
    down.set(event.pointerId, now);
    if (held?.pointer === event.pointerId) {
      const samples = event.getCoalescedEvents();
      held.by.move(samples.length === 0 ? [now] : samples.map(at));
      return;
    }
    const other = [...down].find(([id]) => id !== event.pointerId)?.[1];
    if (other) {
      const spread = Math.hypot(now.x - other.x, now.y - other.y) / Math.hypot(before.x - other.x, before.y - other.y);
      if (Number.isFinite(spread) && spread > 0) moving.zoomAt(spread, (now.x + other.x) / 2, (now.y + other.y) / 2);
      moving.panBy((now.x - before.x) / 2, (now.y - before.y) / 2);
    } else if (moved > SLACK) {
      moving.panBy(now.x - before.x, now.y - before.y);
    }
  };
  const pointerup = (event: PointerEvent): void => {
    const wasHeld = held?.pointer === event.pointerId;
    if (wasHeld) letGo();
    if (down.delete(event.pointerId) && !wasHeld && moved <= SLACK && event.button === 0) {
      const { x, y } = at(event);
      moving.pick?.(x, y);
    }
  };
  const pointercancel = (event: PointerEvent): void => {
    if (held?.pointer === event.pointerId) giveUp();
    down.delete(event.pointerId);
  };
  const pointerleave = (): void => moving.hover(null);

  element.addEventListener('wheel', wheel, { passive: false });
  element.addEventListener('mousedown', mousedown);
  element.addEventListener('contextmenu', contextmenu);
  const listeners = { pointerdown, pointermove, pointerup, pointercancel, pointerleave };
  const entries = Object.entries(listeners) as [keyof typeof listeners, (event: PointerEvent) => void][];
  for (const [name, listener] of entries) element.addEventListener(name, listener);
  return () => {
    letGo();
    element.removeEventListener('wheel', wheel);
    element.removeEventListener('mousedown', mousedown);
    element.removeEventListener('contextmenu', contextmenu);
    for (const [name, listener] of entries) element.removeEventListener(name, listener);
  };
}
