/** A sheet as the preview gets it: how many pages there are and how large, then page after page as a drawing. */
import { sheetToSvg, type SheetOptions, type SheetPage } from '@shared/output/index.ts';
import { problemOf, type Problem } from '@shared/problem/index.ts';
import { projectAt, type Place, type Project } from '@shared/project/index.ts';
import { sheetOf } from './sheet-of.ts';

/** What is to be drawn. */
export interface Wanted {
  readonly project: Project;
  /** The piece that the sheet is of, and its size. */
  readonly at: Place;
  readonly options: SheetOptions;
  /** Index of the page that is looked at, which comes first. */
  readonly from: number;
}

/** A page before it is drawn. */
export type PageFrame = Pick<SheetPage, 'title' | 'widthMm' | 'heightMm'>;

/** A page as `<svg>` text. */
export interface DrawnPage {
  readonly index: number;
  readonly svg: string;
}

export type Drawn =
  /** The sheet is laid out, and a first page is drawn with it, so that no page goes blank that is looked at. */
  | { readonly kind: 'laid'; readonly frames: readonly PageFrame[]; readonly page: DrawnPage }
  | { readonly kind: 'page'; readonly page: DrawnPage }
  /** There is no sheet. */
  | { readonly kind: 'problem'; readonly problem: Problem };

/** Each page is drawn when it is asked for. */
export function* drawnPages({ project, at, options, from }: Wanted): Generator<Drawn> {
  try {
    const sheet = sheetOf(projectAt(project, at), options);
    if (!sheet.ok) return yield { kind: 'problem', problem: sheet.problem };
    const { pages } = sheet.value;
    const first = Math.min(from, pages.length - 1);
    const drawn = (index: number): DrawnPage => ({ index, svg: sheetToSvg(pages[index] as SheetPage) });
    const frames = pages.map(({ title, widthMm, heightMm }) => ({ title, widthMm, heightMm }));
    yield { kind: 'laid', frames, page: drawn(first) };
    for (let next = 1; next < pages.length; next++) yield { kind: 'page', page: drawn((first + next) % pages.length) };
  } catch (thrown) {
    yield { kind: 'problem', problem: problemOf(thrown) };
  }
}
