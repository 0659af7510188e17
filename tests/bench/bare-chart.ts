/**
 * The least that a chart can be: a page with a canvas and a line of text, which
 * at each press and move of the pointer paints the cell that is under it and says which
 * one it is.
 */
import type { Page } from 'playwright';
import type { Box } from './moves.ts';

export interface BareChart {
  /** Where the canvas stands and how large it is, in pixels: as the drawing that it is compared with. */
  readonly box: Box;
  /** Of a cell, in pixels. */
  readonly cell: number;
  /** Paints only while the button is down, as a pen does; otherwise it frames the cell, and clears the frame before. */
  readonly paints: boolean;
}

/** Opens one beside `page`, in the same browser. */
export async function bareChart(page: Page, { box, cell, paints }: BareChart): Promise<Page> {
  const bare = await page.context().newPage();
  const { x, y, width, height } = box;
  await bare.setContent(
    `<!doctype html><style>body{margin:0}canvas{position:absolute;left:${x}px;top:${y}px;width:${width}px;height:${height}px;contain:strict}p{position:absolute;bottom:0;contain:strict;width:400px;height:20px;margin:0}</style><canvas></canvas><p> </p>`,
  );
  await bare.evaluate(
    ({ cell, paints }) => {
      const canvas = document.querySelector('canvas') as HTMLCanvasElement;
      const line = (document.querySelector('p') as HTMLElement).firstChild as Text;
      const box = canvas.getBoundingClientRect();
      canvas.width = box.width;
      canvas.height = box.height;
      const context = canvas.getContext('2d') as CanvasRenderingContext2D;
      context.fillStyle = '#2f6f8f';
      let [lastColumn, lastRow] = [-1, -1];
      for (const type of ['pointermove', 'pointerdown'] as const) {
        canvas.addEventListener(type, (event) => {
          const column = Math.floor(event.offsetX / cell);
          const row = Math.floor(event.offsetY / cell);
          if (event.type === 'pointermove' && column === lastColumn && row === lastRow) return;
          line.data = `Stitch ${column + 1}, row ${row + 1}`;
          if (paints && event.buttons > 0) context.fillRect(column * cell, row * cell, cell, cell);
          else if (!paints) {
            context.clearRect(lastColumn * cell - 1, lastRow * cell - 1, cell + 2, cell + 2);
            context.strokeRect(column * cell + 0.5, row * cell + 0.5, cell - 1, cell - 1);
          }
          [lastColumn, lastRow] = [column, row];
        });
      }
    },
    { cell, paints },
  );
  return bare;
}
