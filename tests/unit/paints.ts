/** How often a layer of a chart paints, on a canvas that only counts. */
import type { ChartLayer } from '../../src-renderer/canvas/index.ts';

const PAINTS = new Set([
  'fill',
  'stroke',
  'fillRect',
  'strokeRect',
  'fillText',
  'strokeText',
  'drawImage',
  'putImageData',
]);

/** With what stands over it and what can be dragged. */
export function paintsOf<View, Scene>(layer: ChartLayer<View, Scene>, view: View, scene: Scene): number {
  let paints = 0;
  const kept: Record<string, unknown> = { measureText: () => ({ width: 10 }) };
  const context = new Proxy(kept, {
    get: (_, name: string) => kept[name] ?? (() => void (paints += PAINTS.has(name) ? 1 : 0)),
  }) as unknown as CanvasRenderingContext2D;
  const frame = { width: 600, height: 520, ratio: 1, boxes: null, part: null };
  layer.draw(context, view, scene, frame);
  for (const node of layer.nodes?.(view, scene, frame) ?? []) node.draw(context);
  layer.drawOver?.(context, view, scene, frame);
  return paints;
}
