/**
 * The chart of 200 × 200 cells with numbers and lines as PNG, against the
 * renderer drawing it and the platform packing the very lines of the file: no
 * pixel looked at. And how large the file is.
 */
import { inflateSync, deflateSync } from 'node:zlib';
import { Resvg } from '@resvg/resvg-js';
import { chartSvg, FONT_FAMILY, type ChartImageOptions } from '@shared/output/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { projectAround, START_YARNS } from '@shared/project/index.ts';
import { FONT_FILES } from '../../src-main/services/export/fonts.ts';
import { chartPng } from '../../src-main/services/export/index.ts';
import type { Bar } from './bar.ts';
import { bestBar } from './best.ts';
import { gridOf, numbers } from './timing.ts';

const SIDE = 200;
const MOST_KB = 200;
const OPTIONS: ChartImageOptions = {
  gauge: { stitches: 28, rows: 40 },
  cellHeight: 24,
  numbers: true,
  gridLines: true,
  repeatBox: true,
};

export async function chartImageBars(): Promise<Bar[]> {
  const next = numbers();
  const grid = gridOf(SIDE, SIDE, () => (next() < 0.4 ? 1 : 0));
  const project = projectAround('p', 'm', grid, 0, 'worn', START_YARNS);
  const motif = project.motifs[0] as Motif;
  const draw = (): Uint8Array => chartPng(motif, project, { ...OPTIONS, dpi: 300 });
  const svg = chartSvg(motif, project, OPTIONS);
  const lines = inflateSync(packedLines(draw()));
  const font = { loadSystemFonts: false, fontFiles: Object.values(FONT_FILES), defaultFontFamily: FONT_FAMILY };
  const drawn = `chart of ${SIDE} × ${SIDE} with numbers as PNG`;
  const kilobytes = draw().length / 1000;
  return [
    await bestBar({
      name: `${drawn}, against rendering it and packing its lines`,
      limit: 1.3,
      rounds: 6,
      work: () => draw().length,
      // At the level that charts were packed at when the bar was set: theirs is lower now, the bar is not.
      least: () => new Resvg(svg, { font }).render().pixels.length + deflateSync(lines, { level: 9 }).length,
    }),
    {
      name: `size of the ${drawn}`,
      limit: 1,
      kind: 'at most',
      ratio: kilobytes / MOST_KB,
      unit: 'kB',
      ours: kilobytes,
      against: MOST_KB,
    },
  ];
}

/** What all `IDAT` of a PNG hold (ISO/IEC 15948, 5.3). */
function packedLines(png: Uint8Array): Uint8Array {
  const file = Buffer.from(png);
  const packed: Uint8Array[] = [];
  for (let at = 8; at < file.length; at += 12 + file.readUInt32BE(at)) {
    if (file.toString('latin1', at + 4, at + 8) === 'IDAT')
      packed.push(file.subarray(at + 8, at + 8 + file.readUInt32BE(at)));
  }
  return Buffer.concat(packed);
}
