/** A sheet as the preview gets it: part by part how many pages there are and how large, then page after page as a drawing. */
import { pageWords, sheetToSvg, type SheetPage } from '@shared/output/index.ts';
import { ProblemError } from '@shared/problem/index.ts';
import { projectSent } from './sent-project.ts';
import { sheetOf } from './sheet-of.ts';
import type { DrawnPage, Job } from './table.ts';

/** Lays a part of the sheet out in a step, and draws a page of it in each of those that follow. */
export const sheetJob: Job<'sheet'> = (sent) => {
  const project = projectSent(sent);
  return function* ({ options, scope, from }, tell) {
    const sheet = sheetOf(project, options, scope);
    if (!sheet.ok) throw new ProblemError(sheet.problem);
    const parts = sheet.value;
    let before = 0;
    for (const [index, part] of parts.entries()) {
      if (index > 0) yield null;
      const pages = part();
      const behind = before;
      const first = Math.min(Math.max(0, from - behind), pages.length - 1);
      const drawn = (at: number): DrawnPage => {
        const page = pages[at] as SheetPage;
        return { index: behind + at, svg: sheetToSvg(page), words: pageWords(page) };
      };
      const frames = pages.map(({ title, widthMm, heightMm }) => ({ title, widthMm, heightMm }));
      tell({ kind: 'laid', before: behind, frames, page: drawn(first), isLast: index === parts.length - 1 });
      for (let next = 1; next < pages.length; next++) {
        yield null;
        tell({ kind: 'page', page: drawn((first + next) % pages.length) });
      }
      before += pages.length;
    }
    return null;
  };
};
