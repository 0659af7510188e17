/** The handles of the picture to trace: which is held, has the keyboard or waits to be put somewhere, and what each does. */
import type { Motif, Underlay } from '@shared/motif/index.ts';
import type { Change } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { handleNode } from '../../canvas/handles.ts';
import type { ChartNode, Held, MarkLook, Point } from '../../canvas/index.ts';
import { placeUnderlay, turnUnderlay } from './placing.ts';
import { CORNERS, cornerSeen, scaledTo, turnedTo, turnHandleSeen, type SeenBy } from './turned-box.ts';

/** What the handles change. */
export interface Traced {
  readonly motif: Motif;
  /** One step of undo for all changes of a gesture. */
  change(change: Change, gesture: string): void;
  giveUp(gesture: string): void;
  announce(text: string): void;
}

/** Number of the handle that turns; those before it are the corners. */
const TURN = CORNERS.length;
const text = words.underlay;
let gestures = 0;

export class UnderlayHandles {
  #held = $state<number | null>(null);
  #focused = $state<number | null>(null);
  /** It was pressed and let go: the next press says where it goes. */
  #picked = $state<number | null>(null);

  constructor(private readonly traced: Traced) {}

  get isPicked(): boolean {
    return this.#picked !== null;
  }

  get isHeld(): boolean {
    return this.#held !== null;
  }

  /** The handles in the order of their numbers: what they are called, and where they are seen. */
  of(underlay: Underlay, seen: SeenBy): { readonly label: string; readonly at: Point }[] {
    const { columns, rows, turn } = underlay;
    return [
      ...CORNERS.map((_, corner) => ({
        label: `${text.corners[corner] ?? ''}. ${text.sizeIs(columns, rows)}`,
        at: cornerSeen(underlay, corner, seen),
      })),
      { label: `${text.turnHandle}. ${text.turnIs(turn)}`, at: turnHandleSeen(underlay, seen) },
    ];
  }

  /** The same as nodes that Konva drags. */
  nodes(underlay: Underlay, seen: SeenBy, look: MarkLook): ChartNode[] {
    return this.of(underlay, seen).map(({ at }, handle) =>
      handleNode(
        String(handle),
        at,
        handle === TURN ? 'ring' : 'square',
        {
          isHeld: this.#held === handle,
          isPicked: this.#picked === handle,
          hasKeyboard: this.#focused === handle,
        },
        look,
      ),
    );
  }

  /** Takes hold of a handle that is pressed; without being dragged it waits to be put where the chart is pressed next. */
  take(key: string, at: Point, seen: SeenBy): Held | null {
    const handle = Number(key);
    const { underlay } = this.traced.motif;
    if (!underlay) return null;
    const gesture = `underlay-handle-${gestures++}`;
    let isDragged = false;
    this.#held = handle;
    return {
      move: (points) => {
        const to = points.at(-1);
        if (!to) return;
        isDragged = true;
        this.#drag(underlay, handle, { x: to.x - at.x, y: to.y - at.y }, seen, gesture);
      },
      end: () => {
        this.#held = null;
        this.#picked = isDragged ? null : this.#otherThan(handle);
        if (isDragged) this.#tell(handle);
      },
      giveUp: () => {
        this.#held = null;
        if (isDragged) this.traced.giveUp(gesture);
      },
    };
  }

  /** Puts the handle that waits where the chart was pressed; false if none does. */
  put(to: Point, seen: SeenBy): boolean {
    const handle = this.#picked;
    const { underlay } = this.traced.motif;
    this.#picked = null;
    const from = underlay && handle !== null ? this.of(underlay, seen)[handle]?.at : undefined;
    if (!underlay || handle === null || !from) return false;
    this.#drag(underlay, handle, { x: to.x - from.x, y: to.y - from.y }, seen, `underlay-handle-${gestures++}`);
    this.#tell(handle);
    return true;
  }

  /** An arrow key moves a handle by pixels; the one that turns, by degrees. */
  step(handle: number, right: number, down: number, seen: SeenBy): void {
    const { underlay } = this.traced.motif;
    if (!underlay) return;
    const gesture = `underlay-handle-${gestures++}`;
    if (handle === TURN) this.#change(turnUnderlay(this.traced.motif, underlay.turn + right + down), gesture);
    else this.#drag(underlay, handle, { x: right, y: down }, seen, gesture);
    this.#tell(handle);
  }

  focus(handle: number | null): void {
    this.#focused = handle;
  }

  /** The next press is for this handle; a second press of the same lets it be. */
  pick(handle: number): void {
    this.#picked = this.#otherThan(handle);
  }

  #otherThan(handle: number): number | null {
    return this.#picked === handle ? null : handle;
  }

  #drag(from: Underlay, handle: number, by: Point, seen: SeenBy, gesture: string): void {
    const { motif } = this.traced;
    if (handle === TURN) return this.#change(turnUnderlay(motif, turnedTo(from, by, seen)), gesture);
    const { columns, rows, middle } = scaledTo(from, handle, by, seen);
    this.#change(placeUnderlay(motif, columns, rows, middle), gesture);
  }

  #change(change: Change | null, gesture: string): void {
    if (change) this.traced.change(change, gesture);
  }

  #tell(handle: number): void {
    const { underlay } = this.traced.motif;
    if (!underlay) return;
    this.traced.announce(handle === TURN ? text.turnIs(underlay.turn) : text.sizeIs(underlay.columns, underlay.rows));
  }
}
