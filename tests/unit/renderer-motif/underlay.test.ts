import { crc32 } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { makeGrid } from '@shared/grid/index.ts';
import { outcome } from '@shared/problem/index.ts';
import { underlayFieldsSchema, underlaySchema, type Motif, type Underlay } from '@shared/motif/index.ts';
import { z } from '@shared/schema/index.ts';
import { applyChange, sampleProject, type Project } from '@shared/project/index.ts';
import { duplicateMotif } from '../../../src-renderer/motif/editing/motifs.ts';
import { problemInUnderlay } from '../../../src-renderer/motif/underlay/check.ts';
import {
  fittedUnderlay,
  layUnderlay,
  moveUnderlay,
  scaleUnderlay,
  strengthenUnderlay,
  turnUnderlay,
} from '../../../src-renderer/motif/underlay/placing.ts';
import { expectChangeLaws } from '../../property/change-laws.ts';
import { pngOf } from '../picture/pictures.ts';

const sample = sampleProject();
const dataUrl = (bytes: Uint8Array, kind = 'png'): string =>
  `data:image/${kind};base64,${Buffer.from(bytes).toString('base64')}`;
const WHITE_PNG = pngOf([['#ffffff', '#000000']]);
const kept = { picture: dataUrl(WHITE_PNG), width: 400, height: 200 };
const onBench = (project: Project): Motif => project.motifs[0] as Motif;

/** The sample with a picture behind its motif. */
const traced = (): Project => applyChange(sample, layUnderlay(sample, 'lighthouse', kept, 1.4));

describe('a picture to trace', () => {
  it.each([
    { columns: 28, rows: 10, aspect: 1, width: 20, height: 10, left: 4, bottom: 0, why: 'as tall as the chart' },
    { columns: 10, rows: 28, aspect: 1, width: 10, height: 5, left: 0, bottom: 11.5, why: 'as wide as the chart' },
    { columns: 10, rows: 28, aspect: 2, width: 10, height: 10, left: 0, bottom: 9, why: 'cells twice as wide as tall' },
  ])('lies in the middle, $why', ({ columns, rows, aspect, width, height, left, bottom }) => {
    const underlay = fittedUnderlay(kept, makeGrid(columns, rows), aspect);
    expect(underlay).toMatchObject({ columns: width, rows: height, left, bottom, isShown: true });
  });

  it('is part of the motif, so it is saved and undone', () => {
    const after = expectChangeLaws(sample, layUnderlay(sample, 'lighthouse', kept, 1.4));
    expect(onBench(after).underlay?.picture).toBe(kept.picture);
    expect(layUnderlay(after, 'lighthouse', kept, 1.4).name).toBe('replace-underlay');
  });

  it('moves by parts of a cell and grows about its middle', () => {
    const project = traced();
    const { left = 0, bottom = 0, columns = 0, rows = 0 } = onBench(project).underlay ?? {};
    const moved = onBench(applyChange(project, moveUnderlay(onBench(project), 0.25, -3) as never)).underlay;
    expect(moved).toMatchObject({ columns, rows });
    expect(moved?.left).toBeCloseTo(left + 0.25, 6);
    expect(moved?.bottom).toBeCloseTo(bottom - 3, 6);
    const grown = onBench(applyChange(project, scaleUnderlay(onBench(project), 2) as never)).underlay;
    expect(grown?.columns).toBeCloseTo(2 * columns, 2);
    expect((grown?.left ?? 0) + (grown?.columns ?? 0) / 2).toBeCloseTo(left + columns / 2, 2);
    expect((grown?.bottom ?? 0) + (grown?.rows ?? 0) / 2).toBeCloseTo(bottom + rows / 2, 2);
  });

  it('is turned by its own step of undo, and counted from the nearer side', () => {
    const project = traced();
    const turned = expectChangeLaws(project, turnUnderlay(onBench(project), 12.5) as never);
    expect(onBench(turned).underlay?.turn).toBe(12.5);
    expect(turnUnderlay(onBench(turned), 12.5)).toBeNull();
    const over = (degrees: number) => onBench(applyChange(project, turnUnderlay(onBench(project), degrees) as never));
    expect([190, -190, 375].map((degrees) => over(degrees).underlay?.turn)).toEqual([-170, 170, 15]);
  });

  it('of a file that knew no turn stands straight', () => {
    const { turn: _, ...before } = onBench(traced()).underlay as Underlay;
    expect(underlaySchema.parse(before).turn).toBe(0);
    // What is set of it alone leaves the turn as it is.
    expect(z.partial(underlayFieldsSchema).parse({ left: 1 })).toEqual({ left: 1 });
  });

  it('never fades out altogether', () => {
    const faint = strengthenUnderlay(onBench(traced()), 0);
    expect(faint).toMatchObject({ edits: [{ to: { opacity: 0.1 } }] });
  });

  it('is refused where the file could not hold it, by a copy too', () => {
    const large = { ...kept, picture: `data:image/png;base64,${'A'.repeat(2_900_000)}` };
    const motif = onBench(applyChange(sample, layUnderlay(sample, 'lighthouse', large, 1)));
    const full = { ...sample, motifs: Array.from({ length: 8 }, (_, at) => ({ ...motif, id: `m${at}` })) };
    const copied = outcome(() => duplicateMotif(full, 'm0', 'copy', 'm9'));
    expect(copied).toMatchObject({ problem: { code: 'underlays-too-large' } });
    const bare = { ...full, motifs: [...full.motifs, { ...motif, id: 'bare', isLettering: false, underlay: null }] };
    expect(outcome(() => layUnderlay(bare, 'bare', large, 1))).toMatchObject({
      problem: { code: 'underlays-too-large' },
    });
  });
});

describe('a picture to trace that came with a file', () => {
  /** A PNG whose header claims another size, with a checksum that fits it (ISO/IEC 15948, 5.5: of type and data). */
  const claiming = (width: number): Uint8Array => {
    const bytes = WHITE_PNG.slice();
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    view.setUint32(16, width);
    view.setUint32(29, crc32(bytes.subarray(12, 29)));
    return bytes;
  };

  it.each([
    ['sound', dataUrl(WHITE_PNG), null],
    ['cut off', dataUrl(WHITE_PNG.subarray(0, WHITE_PNG.length - 14)), 'picture-truncated'],
    ['larger than any that is kept', dataUrl(claiming(1601)), 'picture-too-large'],
    ['larger than any that is decoded', dataUrl(claiming(2 ** 31 - 1)), 'photo-too-large'],
    ['no picture', dataUrl(new TextEncoder().encode('not a picture at all, only text')), 'photo-unknown-kind'],
    ['an SVG', dataUrl(new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg"/>')), 'photo-unknown-kind'],
    ['broken text', 'data:image/png;base64,A', 'picture-broken'],
  ])('is looked at before it is shown: %s', (_, picture, code) => {
    expect(problemInUnderlay({ picture })?.code ?? null).toBe(code);
  });
});
