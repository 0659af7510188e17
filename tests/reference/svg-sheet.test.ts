/** Sheets and charts as SVG, parsed by the strict XML reader of an independent renderer. */
import { Resvg } from '@resvg/resvg-js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chartSvg, placementSheet, sheetFacts, sheetToSvg } from '@shared/output/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { pieceIn, sampleProject, projectAt } from '@shared/project/index.ts';
import { TEST_DAY } from '../day.ts';
import { textsOf } from '../unit/output/items-of.ts';
import { PROJECTS } from '../unit/output/projects.ts';

/** Throws for anything that is not well-formed XML; the size of the drawing otherwise. */
function parse(svg: string): [width: number, height: number] {
  const image = new Resvg(svg, { font: { loadSystemFonts: false } });
  return [image.width, image.height];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** The text of each `<text>` element. */
function textsIn(svg: string): string[] {
  return [...svg.matchAll(/<text[^>]*>(.*?)<\/text>/gs)].map(([, inside = '']) =>
    inside.replace(/<[^>]*>/g, '').replace(/&([a-z]+|#39);/g, (_, name: string) => ENTITIES[name] ?? ''),
  );
}

const OPTIONS = {
  gauge: { stitches: 28, rows: 40 },
  cellHeight: 20,
  numbers: true,
  gridLines: true,
  repeatBox: true,
} as const;

describe('the reader that these tests rely on', () => {
  it.each(['<svg', '<svg xmlns="http://www.w3.org/2000/svg"><text>a & b</text></svg>', '<svg a="<"/>'])(
    'refuses %j',
    (svg) => {
      expect(() => parse(svg)).toThrow();
    },
  );
});

describe('the date of a chart as SVG', () => {
  // SVG 2, 5.8 (metadata), and Dublin Core 1.1, date.
  it('stands in its metadata, once, and nowhere without one', () => {
    const sample = sampleProject();
    const { motifs } = sample;
    const svg = chartSvg(motifs[0] as Motif, sample, { ...OPTIONS, date: TEST_DAY });
    expect(parse(svg)).toEqual(parse(chartSvg(motifs[0] as Motif, sample, OPTIONS)));
    expect(svg.match(/<metadata>.*<\/metadata>/)?.[0]).toContain('<dc:date>2026-01-02</dc:date>');
    expect(svg.split('2026').length).toBe(2);
    expect(chartSvg(motifs[0] as Motif, sample, OPTIONS)).not.toContain('metadata');
  });
});

describe('a page of the sheet as SVG', () => {
  it.each(['sample', 'hem', 'crowded', 'scarf', 'tiny', 'plain'])(
    'of the %s project is XML and says it all',
    (name) => {
      const project = (PROJECTS[name] as (typeof PROJECTS)[string])();
      for (const page of placementSheet(sheetFacts(project), makePlan(pieceIn(project)), {
        paper: 'a4',
        date: TEST_DAY,
      }).pages) {
        const svg = sheetToSvg(page);
        // A4 in pixels of 1/96 in, upright or turned.
        expect(parse(svg)).toEqual(page.widthMm < page.heightMm ? [794, 1123] : [1123, 794]);
        expect(textsIn(svg)).toEqual(textsOf(page).map(({ spans }) => spans.map(({ text }) => text).join('')));
        expect(svg).not.toMatch(/<style|<script| style=/);
      }
    },
  );

  it('escapes names that look like markup', () => {
    const sample = projectAt(sampleProject());
    const name = `<&"'> ]]> <script>`;
    const project = { ...sample, name, yarns: sample.yarns.map((yarn) => ({ ...yarn, name })) };
    for (const page of placementSheet(sheetFacts(project), makePlan(pieceIn(project)), {
      paper: 'letter',
      date: TEST_DAY,
    }).pages) {
      const svg = sheetToSvg(page);
      expect(parse(svg)).toEqual([816, 1056]);
      expect(svg).not.toContain('<script>');
      expect(textsIn(svg).join(' ')).toContain(`<&"'> ]]> <script>`);
    }
  });
});

describe('a chart as SVG', () => {
  const sample = sampleProject();
  const lighthouse = sample.motifs[0] as Motif;

  it('has its numbers as text, row 1 at the bottom', () => {
    const svg = chartSvg(lighthouse, sample, OPTIONS);
    parse(svg);
    expect(textsIn(svg)).toEqual(
      [...Array.from({ length: 18 }, (_, i) => i + 1), ...Array.from({ length: 14 }, (_, i) => i + 1)].map(String),
    );
    const baseline = (row: number): number =>
      Number(new RegExp(`y="([\\d.]+)"[^>]*>${row}</text>`).exec(svg)?.[1] ?? Number.NaN);
    expect(baseline(1)).toBeGreaterThan(baseline(18));
  });

  it('is XML whatever the motif is called', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', minLength: 1, maxLength: 40 }), (name) => {
        expect(() => parse(chartSvg({ ...lighthouse, name }, sample, OPTIONS))).not.toThrow();
      }),
      { numRuns: 60 },
    );
  });

  it('draws a cell in whole pixels', () => {
    const svg = chartSvg(lighthouse, sample, { ...OPTIONS, numbers: false });
    const cells = [...svg.matchAll(/<path d="([^"]+)"[^>]*shape-rendering="crispEdges"/g)].map(([, data = '']) => data);
    expect(cells).toHaveLength(1);
    expect(cells[0]).toMatch(/^[Mhvz\d -]+$/);
  });
});
