/**
 * A width typed on the Piece bench, and strokes taken back on the Motif bench, in
 * the built window: what the main thread works for a key, against a page that
 * has a field, canvases of the same sizes and a line of text; and the longest
 * task meanwhile.
 */
import type { Page } from 'playwright';
import type { Project } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { fullBody, longBody } from '../long-body.ts';
import { settled } from '../written-projects.ts';
import { bareField } from './bare-field.ts';
import { quantile, type Bar } from './bar.ts';
import { withWindows } from './built-window.ts';
import { drawingOf } from './hand.ts';
import { longestBars } from './longest.ts';
import { drawingBox } from './moves.ts';
import { roundsOf } from './slowed.ts';
import { MOST_MS, workByKey, type Task } from './tasks.ts';
import { atRest } from './visiting.ts';

const ROUNDS = 3;
/** Keys of a round. */
const KEYS = 8;

interface Typed {
  readonly name: string;
  /** How many times as long as on the bare page a key may take. */
  readonly limit: number;
  readonly project: Project;
  /** Makes ready what the keys are for. */
  readonly begin: (page: Page) => Promise<void>;
  /** Pressed one after the other, from the first on again. */
  readonly keys: readonly string[];
}

/** Every other key of a width leaves one that is no width: what is told is the other half. */
const LATE = 0.75;

/** The last digit goes and another comes. */
const OTHER_WIDTHS = ['Backspace', '1', 'Backspace', '0'];

async function toWidth(page: Page): Promise<void> {
  const { form } = words.piece;
  const more = page.getByRole('button', { name: form.sizeAndEdges });
  // Later the field is there, and a figure would be typed into it.
  if (!(await more.isVisible())) {
    await page.keyboard.press('2');
    await more.click();
  }
  const width = page.getByRole('textbox', { name: form.counts.stitches, exact: true });
  await width.focus();
  await page.keyboard.press('End');
  if (!/^1\d0$/.test(await width.inputValue())) throw new Error('The width is not the one that was begun with');
}

/** A little less than a whole bed, so that a stitch more fits. */
function wideBody(): Project {
  const body = fullBody(36);
  return settled(body, { piece: { ...body.piece, shape: { kind: 'rectangle', stitches: 190, rows: 1000 } } }).whole;
}

/** As many strokes as are taken back. */
async function drawStrokes(page: Page): Promise<void> {
  const { x, y, width, height } = await drawingBox(page);
  for (let stroke = 0; stroke < KEYS; stroke++) {
    const row = y + height * (0.3 + (0.4 * stroke) / KEYS);
    await page.mouse.move(x + width * 0.4, row);
    await page.mouse.down();
    await page.mouse.move(x + width * 0.6, row);
    await page.mouse.up();
  }
}

export async function typingBars(): Promise<Bar[]> {
  const typed: readonly Typed[] = [
    {
      name: 'a width of two bands is typed',
      limit: 12,
      project: settled(longBody(2)).whole,
      begin: toWidth,
      keys: OTHER_WIDTHS,
    },
    {
      name: 'a width of 36 bands on 190 × 1000 is typed',
      limit: 12,
      project: wideBody(),
      begin: toWidth,
      keys: OTHER_WIDTHS,
    },
    {
      name: 'strokes on 24 × 20 are taken back',
      limit: 2,
      project: drawingOf(24, 20),
      begin: drawStrokes,
      keys: ['Control+z'],
    },
    {
      name: 'strokes on 200 × 1000 are taken back',
      limit: 4,
      project: drawingOf(200, 1000),
      begin: drawStrokes,
      keys: ['Control+z'],
    },
  ];
  return withWindows(async (open) => {
    const bars: Bar[] = [];
    for (const one of typed) {
      const page = await open(one.project);
      bars.push(...(await barsOf(page, one)));
      await page.context().close();
    }
    return bars;
  });
}

/** Presses key by key, each when all that the one before has set going is done. */
async function press(page: Page, keys: readonly string[]): Promise<void> {
  for (let key = 0; key < KEYS; key++) {
    await page.keyboard.press(keys[key % keys.length] as string);
    await atRest(page);
  }
}

async function barsOf(page: Page, { name, limit, begin, keys }: Typed): Promise<Bar[]> {
  await begin(page);
  await atRest(page);
  const bare = await bareField(page);
  const tasks: Task[][] = [];
  const best = { ours: Infinity, bare: Infinity };
  for (let round = -1; round < roundsOf(ROUNDS); round++) {
    for (const [of, where] of Object.entries({ ours: page, bare }) as ['ours' | 'bare', Page][]) {
      await where.bringToFront();
      if (of === 'ours' && round >= 0) await begin(page);
      await atRest(where);
      const pressed = await workByKey(where, () => press(where, keys));
      if (pressed.work.length < KEYS) throw new Error(`Only ${pressed.work.length} of ${KEYS} keys were heard`);
      // The first round is for the compiler.
      if (round < 0) continue;
      best[of] = Math.min(best[of], quantile(pressed.work, LATE));
      if (of === 'ours') tasks.push(pressed.tasks);
    }
  }
  return [
    {
      name: `what the page works for a key while ${name}, 3 of 4 keys, against a bare page with a field, canvases and a line of text`,
      kind: 'at most',
      limit,
      ratio: best.ours / best.bare,
      ours: best.ours,
      against: best.bare,
    },
    ...longestBars(`while ${name}`, MOST_MS, tasks),
  ];
}
