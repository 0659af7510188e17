/** The calls that draw something on 2D canvases, written down to be made again on another one. */

export type Call = (context: CanvasRenderingContext2D) => void;

/** Asking is no drawing; and what is put on one canvas must not be cleared away by what was a layer above. */
const LEFT_OUT = new Set(['measureText', 'getImageData', 'clearRect', 'getContextAttributes', 'isContextLost']);

/** Does `work` and gives the calls it made on canvases that `isMeant` names, in their order. */
export function recordCalls(work: () => void, isMeant: (canvas: HTMLCanvasElement) => boolean): Call[] {
  const calls: Call[] = [];
  const { drawImage } = CanvasRenderingContext2D.prototype;
  const copies = new Map<HTMLCanvasElement, HTMLCanvasElement>();
  /** A picture that is drawn changes with the next frame, and stays as it is in one; what was drawn of it must not change. */
  const copyOf = (canvas: HTMLCanvasElement): HTMLCanvasElement => {
    const known = copies.get(canvas);
    if (known) return known;
    const copy = document.createElement('canvas');
    copy.width = canvas.width;
    copy.height = canvas.height;
    Reflect.apply(drawImage, copy.getContext('2d'), [canvas, 0, 0]);
    copies.set(canvas, copy);
    return copy;
  };
  const { prototype } = CanvasRenderingContext2D;
  const found = Object.entries(Object.getOwnPropertyDescriptors(prototype));
  for (const [name, property] of found) {
    if (LEFT_OUT.has(name) || name === 'constructor' || name === 'canvas') continue;
    const { value, set } = property as { value?: unknown; set?: (to: unknown) => void };
    if (typeof value === 'function') {
      const make = value as (this: CanvasRenderingContext2D, ...given: unknown[]) => unknown;
      Object.defineProperty(prototype, name, {
        ...property,
        value(this: CanvasRenderingContext2D, ...given: unknown[]) {
          if (isMeant(this.canvas)) {
            const kept = given.map((one) => (one instanceof HTMLCanvasElement ? copyOf(one) : one));
            calls.push((context) => make.apply(context, kept));
          }
          return make.apply(this, given);
        },
      });
    } else if (set) {
      Object.defineProperty(prototype, name, {
        ...property,
        set(this: CanvasRenderingContext2D, to: unknown) {
          if (isMeant(this.canvas)) calls.push((context) => set.call(context, to));
          set.call(this, to);
        },
      });
    }
  }
  try {
    work();
  } finally {
    for (const [name, property] of found) Object.defineProperty(prototype, name, property);
  }
  return calls;
}
