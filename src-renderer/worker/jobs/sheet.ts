/** A sheet as the preview gets it: how many pages there are and how large, then page after page as a drawing. */
import { sheetToSvg, type SheetPage } from '@shared/output/index.ts';
import { ProblemError } from '@shared/problem/index.ts';
import { projectSent } from './sent-project.ts';
import { sheetOf } from './sheet-of.ts';
import type { DrawnPage, Job } from './table.ts';

/** Lays the sheet out in the first step, and draws a page in each of those that follow. */
export const sheetJob: Job<'sheet'> = (sent) => {
  const project = projectSent(sent);
  return function* ({ options, from }, tell) {
    const sheet = sheetOf(project, options);
    if (!sheet.ok) throw new ProblemError(sheet.problem);
    const { pages } = sheet.value;
    const first = Math.min(from, pages.length - 1);
    const drawn = (index: number): DrawnPage => ({ index, svg: sheetToSvg(pages[index] as SheetPage) });
    const frames = pages.map(({ title, widthMm, heightMm }) => ({ title, widthMm, heightMm }));
    tell({ kind: 'laid', frames, page: drawn(first) });
    for (let next = 1; next < pages.length; next++) {
      yield null;
      tell({ kind: 'page', page: drawn((first + next) % pages.length) });
    }
    return null;
  };
};
