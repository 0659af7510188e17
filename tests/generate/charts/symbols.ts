/** Signs that charts print into cells, as shapes about the middle of a cell: x to the right and y down, −½ … ½. */

export const SYMBOLS = [
  'cross',
  'plus',
  'dot',
  'ring',
  'slash',
  'backslash',
  'bar',
  'upright',
  'triangle',
  'diamond',
  'box',
  'vee',
] as const;
export type SymbolName = (typeof SYMBOLS)[number];

/** Whether the sign covers a place; `width` is that of its strokes, in cells. */
export function isInSymbol(symbol: SymbolName, x: number, y: number, width: number): boolean {
  const half = width / 2;
  const [ax, ay] = [Math.abs(x), Math.abs(y)];
  switch (symbol) {
    case 'cross':
      return Math.abs(ax - ay) < half * Math.SQRT2 && ax < 0.3;
    case 'plus':
      return (ax < half && ay < 0.32) || (ay < half && ax < 0.32);
    case 'dot':
      return Math.hypot(x, y) < 0.1 + width;
    case 'ring':
      return Math.abs(Math.hypot(x, y) - 0.24) < half;
    case 'slash':
      return Math.abs(x + y) < half * Math.SQRT2 && ax < 0.32;
    case 'backslash':
      return Math.abs(x - y) < half * Math.SQRT2 && ax < 0.32;
    case 'bar':
      return ay < half && ax < 0.32;
    case 'upright':
      return ax < half && ay < 0.32;
    case 'triangle':
      return y < 0.24 && y > -0.28 && ax < (y + 0.28) * 0.55;
    case 'diamond':
      return ax + ay < 0.3;
    case 'box':
      return Math.max(ax, ay) < 0.27 && Math.max(ax, ay) > 0.27 - width;
    case 'vee':
      return Math.abs(ax * 1.8 - (0.28 - y)) < half * 2 && ay < 0.28;
  }
}
