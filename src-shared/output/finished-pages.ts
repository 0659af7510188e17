/** Pages with their running heads, which say of each what it belongs to, should it go astray. */
import type { Day } from '../day/index.ts';
import { words } from '../words/index.ts';
import { sheetWords } from '../words/sheet.ts';
import { widthMm } from './font/metrics.ts';
import { printable } from './font/printable.ts';
import { shorten } from './font/wrap.ts';
import { textItem } from './items.ts';
import type { SheetElement, SheetPage } from './model.ts';
import type { PaperMm } from './paper.ts';
import { HEAD_BASELINE_MM, PAGE_MARGIN_MM, SMALL_PT } from './style.ts';

/** A page with what stands on it, its running head apart. */
export interface LaidPage {
  readonly size: PaperMm;
  readonly elements: SheetElement[];
}

/** What pages belong to. */
export interface PagesOf {
  readonly project: string;
  readonly piece: string;
  /** Null where there is but one. */
  readonly size: string | null;
}

/** Between the two ends of a running head, at least. */
const HEAD_GAP_MM = 10;

/** The pages, numbered among themselves. */
export function finishedPages(of: PagesOf, pages: readonly LaidPage[], date: Day): SheetPage[] {
  return pages.map((page, index) => finishedPage(of, page, date, index, pages.length));
}

function finishedPage(of: PagesOf, { size, elements }: LaidPage, date: Day, index: number, count: number): SheetPage {
  const sheet = sheetWords;
  const right = size.widthMm - PAGE_MARGIN_MM;
  const style = { sizePt: SMALL_PT, tone: 'soft' } as const;
  const placed = sheet.pageOnDay(index + 1, count, date);
  const room = right - PAGE_MARGIN_MM - widthMm(placed, SMALL_PT) - HEAD_GAP_MM;
  return {
    title: sheet.pageTitle(index + 1, count),
    widthMm: size.widthMm,
    heightMm: size.heightMm,
    elements: [
      {
        role: 'decoration',
        items: [
          textItem(headWithin(of, room), PAGE_MARGIN_MM, HEAD_BASELINE_MM, style),
          textItem(placed, right, HEAD_BASELINE_MM, { ...style, anchor: 'end' }),
        ],
      },
      ...elements,
    ],
  };
}

/** Project, piece and size in that width: a long name is cut before a short one, and none is left out. */
function headWithin({ project, piece, size }: PagesOf, roomMm: number): string {
  const head = ([project = '', piece = '', size]: readonly string[]): string =>
    `${project} · ${words.knitting.piece({ name: piece }, size ?? null)} · ${sheetWords.runningHead}`;
  const names = [project, piece, ...(size === null ? [] : [size])].map(printable);
  const between = widthMm(head(names.map(() => '')), SMALL_PT);
  return head(namesWithin(names, roomMm - between));
}

function namesWithin(names: readonly string[], roomMm: number): string[] {
  let [left, others] = [roomMm, names.length];
  const fitted = new Map<number, string>();
  // The shorter ones first: what they leave of their share is had by the longer.
  const widths = names.map((name, index) => ({ index, width: widthMm(name, SMALL_PT) }));
  for (const { index } of widths.sort((a, b) => a.width - b.width)) {
    const name = shorten(names[index] as string, left / others, SMALL_PT);
    fitted.set(index, name);
    left -= widthMm(name, SMALL_PT);
    others--;
  }
  return names.map((_, index) => fitted.get(index) as string);
}
