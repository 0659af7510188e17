/**
 * A printed sheet of 30 pages, laid out and written as a PDF, against the PDF
 * library making the very calls that draw it.
 *
 * The calls are written down while the program makes the file: text in its font,
 * size and colour, lines, rectangles, pages. Made again, they find out nothing:
 * where things stand is known, and nothing is tagged for assistive technology.
 */
import { readFile } from 'node:fs/promises';
import PDFDocument from 'pdfkit';
import { localDay } from '@shared/day/index.ts';
import { placementSheet, sheetFacts, type SheetDocument } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { FONT_FILES } from '../../src-main/services/export/fonts.ts';
import { sheetToPdf } from '../../src-main/services/export/pdf.ts';
import { REGULAR, SEMIBOLD } from '../../src-main/services/export/pdf-items.ts';
import { longBody } from '../long-body.ts';
import { median, type Bar } from './bar.ts';

export const PAGES = 30;
const ROUNDS = 30;
/** Rounds before the clock counts, for the compiler to have seen both. */
const WARM_UP = 6;

type Pdf = InstanceType<typeof PDFDocument>;
type Call = (pdf: Pdf) => void;

/** What puts something on a page, or says how: no tags, and no measuring. */
const DRAWING = new Set([
  ...['addPage', 'font', 'fontSize', 'fillColor', 'text', 'rect', 'moveTo', 'lineTo', 'closePath'],
  ...['lineWidth', 'dash', 'undash', 'fill', 'stroke', 'fillAndStroke'],
]);

/** A body that is just long enough. */
export function projectOfPages(pages: number): ProjectAt {
  for (let bands = 1; bands < 40; bands++) {
    const project = longBody(bands);
    if (sheetOf(project).pages.length >= pages) return project;
  }
  throw new Error(`No sheet of ${pages} pages was found`);
}

function sheetOf(project: ProjectAt): SheetDocument {
  return layOut(project)();
}

/** Lays the sheet out, again with each call; the plan is made once. */
function layOut(project: ProjectAt): () => SheetDocument {
  const plan = makePlan(pieceIn(project));
  const date = localDay(new Date(2026, 0, 2));
  return () => placementSheet(sheetFacts(project), plan, { paper: 'a4', date });
}

/** Does `work` and gives the calls by which it drew, in their order. Calls that the library makes itself are none. */
async function recordCalls(work: () => Promise<unknown>): Promise<Call[]> {
  const calls: Call[] = [];
  const prototype = PDFDocument.prototype as object;
  const found = Object.entries(Object.getOwnPropertyDescriptors(prototype)).filter(([name]) => DRAWING.has(name));
  if (found.length !== DRAWING.size) throw new Error('The library calls something by another name');
  let depth = 0;
  for (const [name, property] of found) {
    const make = property.value as (this: Pdf, ...given: unknown[]) => unknown;
    Object.defineProperty(prototype, name, {
      ...property,
      value(this: Pdf, ...given: unknown[]) {
        if (depth === 0) calls.push((pdf) => make.apply(pdf, given));
        depth++;
        try {
          return make.apply(this, given);
        } finally {
          depth--;
        }
      },
    });
  }
  try {
    await work();
  } finally {
    for (const [name, property] of found) Object.defineProperty(prototype, name, property);
  }
  return calls;
}

/** The bytes of a PDF in which the calls were made. */
async function replayed(calls: readonly Call[]): Promise<number> {
  const [regular, semibold] = await Promise.all([readFile(FONT_FILES.regular), readFile(FONT_FILES.semibold)]);
  const pdf = new PDFDocument({ autoFirstPage: false, pdfVersion: '1.7', margin: 0 });
  const ended = new Promise<number>((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    pdf.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on('end', () => resolve(Buffer.concat(chunks).length));
    pdf.on('error', reject);
  });
  pdf.registerFont(REGULAR, regular);
  pdf.registerFont(SEMIBOLD, semibold);
  for (const call of calls) call(pdf);
  pdf.end();
  return ended;
}

async function timed(work: () => Promise<number>): Promise<number> {
  const start = performance.now();
  const bytes = await work();
  if (bytes === 0) throw new Error('Nothing was written');
  return performance.now() - start;
}

export async function sheetBars(): Promise<Bar[]> {
  const layOutAgain = layOut(projectOfPages(PAGES));
  const sheet = layOutAgain();
  const calls = await recordCalls(() => sheetToPdf(sheet));
  const write = async (made: SheetDocument): Promise<number> => (await sheetToPdf(made)).length;
  const all: number[] = [];
  const writing: number[] = [];
  const against: number[] = [];
  for (let round = -WARM_UP; round < ROUNDS; round++) {
    // The other before and after: a slow moment at either is averaged out.
    const before = await timed(() => replayed(calls));
    const whole = await timed(async () => write(layOutAgain()));
    const written = await timed(() => write(sheet));
    const after = await timed(() => replayed(calls));
    if (round < 0) continue;
    all.push(whole);
    writing.push(written);
    against.push((before + after) / 2);
  }
  const compared = (ours: readonly number[]) => ({
    ratio: median(ours.map((ms, round) => ms / (against[round] as number))),
    ours: median(ours),
    against: median(against),
  });
  return [
    {
      name: `sheet of ${sheet.pages.length} pages laid out and written as PDF, against the PDF library drawing the same`,
      kind: 'at most',
      limit: 1.5,
      ...compared(all),
    },
    {
      name: 'writing it alone, tagged for assistive technology',
      kind: 'figure',
      limit: null,
      ...compared(writing),
    },
  ];
}
