/** The chart on the Motif bench, used as a person uses it. */
import type { Locator, Page } from '@playwright/test';

/** Letters that stand for colours when a chart is read off the screen. */
const LETTERS: Readonly<Record<string, string>> = { '#5d7591': '.', '#fbf7ea': '#' };

/** The lighthouse of the sample project, topmost row first. */
export const LIGHTHOUSE = [
  '......#.......',
  '.....###......',
  '....#####.....',
  '.##..###..##..',
  '#..#.#.#.#..#.',
  '....##.##.....',
  '.....###......',
  '.....###......',
  '....##.##.....',
  '....##.##.....',
  '....#####.....',
  '....#...#.....',
  '...#######....',
  '...##...##....',
  '...#######....',
  '..###...###...',
  '..#########...',
  '#############.',
];

type Pixel = readonly [red: number, green: number, blue: number];

const hex = (pixel: Pixel): string => `#${pixel.map((part) => part.toString(16).padStart(2, '0')).join('')}`;

export class Chart {
  readonly grid: Locator;
  readonly cell: Locator;

  constructor(readonly page: Page) {
    this.grid = page.getByRole('grid');
    this.cell = this.grid.getByRole('gridcell');
  }

  /** Size in cells. */
  async size(): Promise<{ columns: number; rows: number }> {
    const [columns, rows] = await Promise.all([
      this.grid.getAttribute('aria-colcount'),
      this.grid.getAttribute('aria-rowcount'),
    ]);
    return { columns: Number(columns), rows: Number(rows) };
  }

  /** Width and height of a cell in pixels. */
  async cellSize(): Promise<{ width: number; height: number }> {
    const { width, height } = await this.origin();
    return { width, height };
  }

  /** The middle of a cell on the page; stitches and rows count from 1, row 1 at the bottom. */
  async at(stitch: number, row: number): Promise<{ x: number; y: number }> {
    const { x, y, width, height } = await this.origin();
    return { x: x + width * (stitch - 1), y: y - height * (row - 1) };
  }

  /** The middle of row 1, stitch 1, and the size of every cell; taken from where the focused cell stands. */
  private async origin(): Promise<{ x: number; y: number; width: number; height: number }> {
    return this.cell.evaluate(async (cell) => {
      const now = (): { x: number; y: number; width: number; height: number } => {
        const { left, top, width, height } = cell.getBoundingClientRect();
        const stitch = Number(cell.getAttribute('aria-colindex'));
        const row = Number(cell.parentElement?.getAttribute('aria-rowindex'));
        return { x: left - (stitch - 1.5) * width, y: top + (row - 0.5) * height, width, height };
      };
      for (let last = now(); ;) {
        await new Promise(requestAnimationFrame);
        const origin = now();
        if (JSON.stringify(origin) === JSON.stringify(last)) return origin;
        last = origin;
      }
    });
  }

  async hover(stitch: number, row: number): Promise<void> {
    const { x, y } = await this.at(stitch, row);
    await this.page.mouse.move(x, y);
  }

  async click(stitch: number, row: number, how: { readonly button?: 'left' | 'right' } = {}): Promise<void> {
    const { x, y } = await this.at(stitch, row);
    await this.page.mouse.click(x, y, how);
  }

  /** Drags from the first cell over the others, with no more samples of the pointer than these. */
  async drag(...cells: readonly (readonly [stitch: number, row: number])[]): Promise<void> {
    const { x, y, width, height } = await this.origin();
    const points = cells.map(([stitch, row]) => ({ x: x + width * (stitch - 1), y: y - height * (row - 1) }));
    const [first, ...rest] = points;
    if (!first) return;
    await this.page.mouse.move(first.x, first.y);
    await this.page.mouse.down();
    for (const point of rest) await this.page.mouse.move(point.x, point.y);
    await this.page.mouse.up();
  }

  /**
   * What the screen shows, topmost row first: `.` slate, `#` chalk, `?` any
   * other colour. That is what most of each cell shows: blank columns are hatched.
   */
  async shown(): Promise<string[]> {
    return (await this.pixels('as it is')).map((row) => row.map((colour) => LETTERS[hex(colour)] ?? '?').join(''));
  }

  /** The same for a fabric, where yarn has light and shadow: each stitch is given to the yarn next in lightness. */
  async yarns(): Promise<string[]> {
    return (await this.pixels('by lightness')).map((row) => row.map(([, green]) => (green > 0 ? '#' : '.')).join(''));
  }

  /** What shows on some cells beside the chart, topmost row first: copies are faint, so each is given to the yarn next in lightness. */
  async copies(box: { stitch: number; row: number; columns: number; rows: number }): Promise<string[]> {
    return (await this.pixels('by lightness', box)).map((row) =>
      row.map(([, green]) => (green > 0 ? '#' : '.')).join(''),
    );
  }

  /** Of each cell the colour that most of it has; by lightness: white, or black. */
  private async pixels(
    colours: 'as it is' | 'by lightness',
    box?: { stitch: number; row: number; columns: number; rows: number },
  ): Promise<Pixel[][]> {
    const { columns, rows } = box ?? (await this.size());
    const { x, y, width, height } = await this.origin();
    const origin = { x: x + ((box?.stitch ?? 1) - 1) * width, y: y - ((box?.row ?? 1) - 1) * height, width, height };
    return this.page.evaluate(
      async ({ x, y, width, height, columns, rows, colours }) => {
        const canvas = document.querySelector('canvas');
        const context = canvas?.getContext('2d');
        if (!canvas || !context) throw new Error('The chart has no canvas');
        // What was done last is drawn in the next frame.
        await new Promise(requestAnimationFrame);
        const { left, top } = canvas.getBoundingClientRect();
        const ratio = canvas.width / canvas.clientWidth;
        const { data } = context.getImageData(0, 0, canvas.width, canvas.height);
        /** Of a cell without its edges, the colour that most of its pixels have. */
        const mostOf = (x: number, y: number): Pixel => {
          const reach = [0.4 * width * ratio, 0.4 * height * ratio].map(Math.floor) as [number, number];
          const counts = new Map<number, number>();
          let most = 0;
          for (let pixelY = y - reach[1]; pixelY <= y + reach[1]; pixelY++) {
            for (let pixelX = x - reach[0]; pixelX <= x + reach[0]; pixelX++) {
              const isInView = pixelX >= 0 && pixelX < canvas.width && pixelY >= 0 && pixelY < canvas.height;
              const at = (pixelY * canvas.width + pixelX) * 4;
              const [red, green, blue] = isInView ? data.subarray(at, at + 3) : [0, 0, 0];
              const seen = ((red ?? 0) << 16) | ((green ?? 0) << 8) | (blue ?? 0);
              const colour = colours === 'as it is' ? seen : (green ?? 0) > 180 ? 0xffffff : 0;
              counts.set(colour, (counts.get(colour) ?? 0) + 1);
              if ((counts.get(colour) ?? 0) > (counts.get(most) ?? 0)) most = colour;
            }
          }
          return [most >> 16, (most >> 8) & 255, most & 255];
        };
        return Array.from({ length: rows }, (_, fromTop) =>
          Array.from({ length: columns }, (_, column) =>
            mostOf(
              Math.round((x + column * width - left) * ratio),
              Math.round((y - (rows - 1 - fromTop) * height - top) * ratio),
            ),
          ),
        );
      },
      { ...origin, columns, rows, colours },
    );
  }
}
