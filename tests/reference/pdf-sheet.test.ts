/** The placement sheet read back with a PDF reader that the project does not write with. */
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { getDocument, type PDFDocumentProxy } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { describe, expect, it } from 'vitest';
import { label } from '@shared/bed/index.ts';
import { placementSheet, sheetFacts, type PaperSize, type SheetDocument } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { pieceIn } from '@shared/project/index.ts';
import { TEST_DAY } from '../day.ts';
import { sheetToPdf } from '../../src-main/services/export/index.ts';
import { textsOf } from '../unit/output/items-of.ts';
import { crowdedProject, hemProject, PROJECTS } from '../unit/output/projects.ts';

const require = createRequire(import.meta.url);
const standardFontDataUrl = join(dirname(require.resolve('pdfjs-dist/package.json')), 'standard_fonts/');

async function read(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  return getDocument({ data: new Uint8Array(bytes), standardFontDataUrl, verbosity: 0 }).promise;
}

/** The text runs of each page, as the reader finds them. */
async function textOfPages(pdf: PDFDocumentProxy): Promise<string[][]> {
  const pages: string[][] = [];
  for (let number = 1; number <= pdf.numPages; number++) {
    const { items } = await (await pdf.getPage(number)).getTextContent();
    pages.push(items.flatMap((item) => ('str' in item ? [item.str] : [])));
  }
  return pages;
}

function sheetOf(name: string, paper: PaperSize): SheetDocument {
  const project = (PROJECTS[name] as (typeof PROJECTS)[string])();
  return placementSheet(sheetFacts(project), makePlan(pieceIn(project)), { paper, date: TEST_DAY });
}

const squeezed = (text: string): string => text.replaceAll(/\s/g, '');

describe('the placement sheet as PDF', () => {
  // A4 210 × 297 mm (ISO 216); Letter 8.5 × 11 in (ANSI/ASME Y14.1); the unit is 1/72 in (ISO 32000).
  it.each<{ paper: PaperSize; widthMm: number; heightMm: number }>([
    { paper: 'a4', widthMm: 210, heightMm: 297 },
    { paper: 'letter', widthMm: 215.9, heightMm: 279.4 },
  ])('has $paper pages, to a tenth of a mm', async ({ paper, widthMm, heightMm }) => {
    const pdf = await read(await sheetToPdf(sheetOf('sample', paper)));
    expect(pdf.numPages).toBeGreaterThan(1);
    for (let number = 1; number <= pdf.numPages; number++) {
      const [left, bottom, right, top] = (await pdf.getPage(number)).view as [number, number, number, number];
      expect(((right - left) / 72) * 25.4).toBeCloseTo(widthMm, 1);
      expect(((top - bottom) / 72) * 25.4).toBeCloseTo(heightMm, 1);
      expect(Math.abs(((right - left) / 72) * 25.4 - widthMm)).toBeLessThan(0.1);
      expect(Math.abs(((top - bottom) / 72) * 25.4 - heightMm)).toBeLessThan(0.1);
    }
  });

  it.each(['sample', 'hem', 'crowded', 'scarf', 'tiny'])(
    'of the %s project has every first and last needle as text',
    async (name) => {
      const project = (PROJECTS[name] as (typeof PROJECTS)[string])();
      const runs = (await textOfPages(await read(await sheetToPdf(sheetOf(name, 'a4'))))).flat();
      for (const { block } of makePlan(pieceIn(project)).groups) {
        expect(runs).toContain(label(block.first));
        expect(runs).toContain(label(block.last));
      }
    },
  );

  it.each(['sample', 'hem', 'crowded', 'plain'])('of the %s project gives back all that it says', async (name) => {
    const sheet = sheetOf(name, 'letter');
    const pages = await textOfPages(await read(await sheetToPdf(sheet)));
    sheet.pages.forEach((page, index) => {
      const found = squeezed((pages[index] ?? []).join(''));
      const texts = textsOf(page).map(({ spans }) => squeezed(spans.map(({ text }) => text).join('')));
      expect(found).toBe(texts.join(''));
    });
  });

  it('is the same bytes for the same project', async () => {
    const [one, other] = [await sheetToPdf(sheetOf('hem', 'a4')), await sheetToPdf(sheetOf('hem', 'a4'))];
    expect(Buffer.compare(one, other)).toBe(0);
    const renamed = { ...hemProject(), name: 'Another hem' };
    const third = await sheetToPdf(
      placementSheet(sheetFacts(renamed), makePlan(pieceIn(renamed)), { paper: 'a4', date: TEST_DAY }),
    );
    expect(Buffer.compare(one, third)).not.toBe(0);
  });

  it('embeds its fonts and says its title and language', async () => {
    const project = crowdedProject();
    const pdf = await read(await sheetToPdf(sheetOf('crowded', 'a4')));
    const info = (await pdf.getMetadata()).info as { Title: string; Language: string };
    expect(info.Title).toBe(`${project.name}: placement sheet`);
    expect(info.Language).toBe('en');
    expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true });
    const page = await pdf.getPage(1);
    await page.getOperatorList();
    const content = await page.getTextContent();
    const names = new Set(content.items.flatMap((item) => ('fontName' in item ? [item.fontName] : [])));
    expect(names.size).toBe(2);
    for (const name of names) {
      const font = page.commonObjs.get(name) as { name: string; missingFile?: boolean };
      // A subset's name begins with six letters and a plus (ISO 32000).
      expect(font.name).toMatch(/^[A-Z]{6}\+SourceSans3/);
      expect(font.missingFile).toBeFalsy();
    }
  });

  it('is tagged: headings, lists, tables with header cells, and a figure that is described', async () => {
    interface Node {
      role?: string;
      alt?: string;
      children?: Node[];
    }
    const pdf = await read(await sheetToPdf(sheetOf('hem', 'a4')));
    const nodes: Node[] = [];
    const walk = (node: Node): void => {
      nodes.push(node);
      node.children?.forEach(walk);
    };
    for (let number = 1; number <= pdf.numPages; number++) {
      const tree = (await (await pdf.getPage(number)).getStructTree()) as Node | null;
      if (tree) walk(tree);
    }
    const roles = new Set(nodes.map(({ role }) => role));
    for (const role of ['Document', 'H1', 'H2', 'P', 'L', 'LI', 'Table', 'TR', 'TH', 'TD', 'Figure']) {
      expect(roles).toContain(role);
    }
    const described = nodes.filter(({ role }) => role === 'Figure').map(({ alt }) => alt);
    expect(described[0]).toContain('L48 to L13, rows 61–91; R12 to R47, rows 61–91');
    for (const alt of described) expect(alt).toBeTruthy();
  });
});
