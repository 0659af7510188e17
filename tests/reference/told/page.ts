/** The text of printed pages, put into lines under their headings as the eye does it: by size and place. */

/** A run of text where it stands on a page, in mm from the top left corner; `y` is its baseline. */
export interface Run {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly widthMm: number;
  readonly sizePt: number;
}

export interface Page {
  readonly texts: readonly Run[];
}

export interface Line {
  /** From 0. */
  readonly page: number;
  readonly y: number;
  /** From left to right. */
  readonly runs: readonly Run[];
}

export interface Section {
  readonly heading: string;
  readonly lines: readonly Line[];
}

/** What stands over every page: everything above the first line of what is told. */
const HEAD_MM = 12;
const SAME_LINE_MM = 0.3;
/** Headings are larger than what they stand over, and smaller than the title. */
const HEADING_PT = [12.5, 14] as const;

/** The running head of a page. */
export function headOf({ texts }: Page): string[] {
  return inOrder(texts.filter(({ y }) => y < HEAD_MM)).map(({ text }) => text);
}

/** All sections of a sheet from page to page; what stands before the first heading has the heading ``. */
export function sectionsOf(pages: readonly Page[]): Section[] {
  const sections: { heading: string; lines: Line[] }[] = [{ heading: '', lines: [] }];
  let isInHeading = false;
  for (const line of pages.flatMap(linesOf)) {
    const isHeading = line.runs.every(({ sizePt }) => sizePt > HEADING_PT[0] && sizePt < HEADING_PT[1]);
    const last = sections.at(-1) as (typeof sections)[number];
    if (!isHeading) last.lines.push(line);
    else if (isInHeading) last.heading += ` ${textOf(line)}`;
    else sections.push({ heading: textOf(line), lines: [] });
    isInHeading = isHeading;
  }
  return sections;
}

/** All lines under a heading. Throws where it stands twice; null where it does not stand. */
export function sectionUnder(sections: readonly Section[], heading: RegExp): Section | null {
  const found = sections.filter((section) => heading.test(section.heading));
  if (found.length > 1) throw new Error(`${heading} heads ${found.length} sections`);
  return found[0] ?? null;
}

/** A line with what stands apart in it set apart by single blanks. */
export function textOf({ runs }: Pick<Line, 'runs'>): string {
  return runs.reduce((text, run, index) => {
    const before = runs[index - 1];
    // A strong part goes on where the one before it ends.
    const isNext = before !== undefined && run.x - (before.x + before.widthMm) < run.sizePt * 0.03;
    return text + (text === '' || isNext || text.endsWith(' ') || run.text.startsWith(' ') ? '' : ' ') + run.text;
  }, '');
}

function linesOf({ texts }: Page, page: number): Line[] {
  const lines: { page: number; y: number; runs: Run[] }[] = [];
  const told = texts.filter(({ y }) => y >= HEAD_MM);
  for (const run of [...told].sort((a, b) => a.y - b.y)) {
    const last = lines.at(-1);
    if (last && run.y - last.y < SAME_LINE_MM) last.runs.push(run);
    else lines.push({ page, y: run.y, runs: [run] });
  }
  return lines.map((line) => ({ ...line, runs: inOrder(line.runs) }));
}

function inOrder(runs: readonly Run[]): Run[] {
  return [...runs].sort((a, b) => a.x - b.x);
}
