/**
 * A printed sheet of 76 pages, laid out and written as a PDF, against the PDF
 * library making the calls that draw it. They find out nothing: where things
 * stand is known, and nothing is tagged for assistive technology.
 */
import { localDay } from '@shared/day/index.ts';
import { placementSheet, sheetFacts, type SheetDocument } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn, type ProjectAt } from '@shared/project/index.ts';
import { sheetToPdf } from '../../src-main/services/export/pdf.ts';
import { callsOf, drawnBy } from '../by-library.ts';
import { longBody } from '../long-body.ts';
import type { Bar } from './bar.ts';
import { bestBar } from './best.ts';

const PAGES = 76;
const ROUNDS = 20;

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

export async function sheetBars(): Promise<Bar[]> {
  const layOutAgain = layOut(projectOfPages(PAGES));
  const sheet = layOutAgain();
  const calls = callsOf(sheet);
  const least = async (): Promise<number> => (await drawnBy(calls)).length;
  return [
    await bestBar({
      name: `sheet of ${sheet.pages.length} pages written as PDF, tagged, against the PDF library drawing the same`,
      limit: 1.1,
      rounds: ROUNDS,
      work: async () => (await sheetToPdf(sheet)).length,
      least,
    }),
    await bestBar({
      name: 'the same laid out as well, with what would help worked out',
      limit: 1.5,
      rounds: ROUNDS,
      work: async () => (await sheetToPdf(layOutAgain())).length,
      least,
    }),
  ];
}
