/**
 * The least that can answer a key: a page with a field, canvases of the sizes of
 * those of the program, which are drawn anew as pictures, and a line of text.
 */
import type { Page } from 'playwright';

/** Opens one beside `page`, in the same browser; its field has the focus. */
export async function bareField(page: Page): Promise<Page> {
  const canvases = await page.evaluate(() =>
    [...document.querySelectorAll<HTMLCanvasElement>('main canvas')].flatMap((canvas) => {
      const { x, y, width, height } = canvas.getBoundingClientRect();
      // One that is empty is no picture.
      if (canvas.width === 0 || canvas.height === 0) return [];
      return [{ x, y, width, height, picture: canvas.toDataURL() }];
    }),
  );
  const bare = await page.context().newPage();
  const drawn = canvases.map(
    ({ x, y, width, height }) =>
      `<canvas width="${width}" height="${height}" style="left:${x}px;top:${y}px;width:${width}px;height:${height}px"></canvas>`,
  );
  await bare.setContent(
    `<!doctype html><style>body{margin:0}canvas{position:absolute;contain:strict}p{position:absolute;bottom:0;contain:strict;width:400px;height:20px;margin:0}</style><input>${drawn.join('')}<p> </p>`,
  );
  await bare.evaluate('globalThis.__name = (named) => named');
  await bare.evaluate(
    async (pictures) => {
      const ready = await Promise.all(
        pictures.map(async (picture) => createImageBitmap(await (await fetch(picture)).blob())),
      );
      const line = (document.querySelector('p') as HTMLElement).firstChild as Text;
      let keys = 0;
      window.addEventListener('keydown', () => {
        keys++;
        line.data = `Key ${keys}`;
        for (const [index, canvas] of [...document.querySelectorAll('canvas')].entries()) {
          const context = canvas.getContext('2d') as CanvasRenderingContext2D;
          context.clearRect(0, 0, canvas.width, canvas.height);
          context.drawImage(ready[index] as ImageBitmap, keys % 2, 0);
        }
      });
    },
    canvases.map(({ picture }) => picture),
  );
  await bare.locator('input').focus();
  return bare;
}
