/** Random changes to the sample project, each one that a person could make. */
import fc from 'fast-check';
import { gridFromText, patchCells } from '@shared/grid/index.ts';
import type { Slot } from '@shared/bed/index.ts';
import {
  motifOf,
  startFill,
  startGroup,
  type Band,
  type Change,
  type Motif,
  type Project,
} from '@shared/project/index.ts';
import { anyUnderlay } from './projects.ts';

/** A change that fits the project at the time it is made, and may depend on it. */
export type Step = (project: Project) => Change;

const name = fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme-ascii' });
const side = fc.constantFrom('left' as const, 'right' as const);
const count = (least: number, most: number) => fc.integer({ min: least, max: most });

/** Cells of the first motif set to one of the yarns. */
export const paintStep: fc.Arbitrary<Step> = fc
  .array(fc.tuple(fc.nat(), fc.nat()), { maxLength: 6 })
  .map((cells) => (project) => {
    const motif = motifOf(project, firstMotif(project));
    const { grid } = motif;
    const patch = patchCells(
      grid,
      cells.map(([at, to]) => [at % grid.cells.length, to % project.yarns.length]),
    );
    return { name: 'draw', kind: 'paint', motif: motif.id, patch };
  });

const motifStep: fc.Arbitrary<Step> = fc
  .oneof(
    name.map((to) => ({ name: 'rename-motif' as const, to: { name: to } })),
    fc
      .constantFrom('worn' as const, 'needles' as const)
      .map((shows) => ({ name: 'set-shows' as const, to: { shows } })),
    anyUnderlay.map((underlay) => ({ name: 'move-underlay' as const, to: { underlay } })),
    fc.constantFrom(['.X', 'X.'], ['X..']).map((rows) => ({
      name: 'resize-motif' as const,
      to: { grid: gridFromText(rows, '.X') },
    })),
  )
  .map((change) => (project) => ({ ...change, kind: 'motif', motif: firstMotif(project) }));

const pieceStep: fc.Arbitrary<Step> = fc
  .oneof(
    fc.record({ stitches: count(1, 200), rows: count(1, 300) }).map((size) => ({
      name: 'piece-size' as const,
      to: { shape: { kind: 'rectangle' as const, ...size } },
    })),
    count(0, 100).map((hemRows) => ({ name: 'piece-hem' as const, to: { hemRows } })),
    fc
      .record({ stitches: count(10, 40), rows: count(10, 60) })
      .map((gauge) => ({ name: 'gauge' as const, to: { gauge } })),
    side.map((startSide) => ({ name: 'start-side' as const, to: { startSide } })),
    fc.boolean().map((endNeedleSelection) => ({ name: 'end-needles' as const, to: { endNeedleSelection } })),
    fc.record({ stitches: count(0, 9), mm: fc.constantFrom(null, 25) }).map((floatLimit) => ({
      name: 'float-limit' as const,
      to: { floatLimit },
    })),
  )
  .map((change) => () => ({ ...change, kind: 'piece' }));

const bandStep: fc.Arbitrary<Step> = fc
  .oneof(
    fc.array(count(1, 4), { minLength: 1, maxLength: 3 }).map((copies) => ({
      name: 'copies' as const,
      to: { groups: copies.map((across) => startGroup('lighthouse', across)) },
    })),
    fc
      .constantFrom('seam' as const, 'even' as const)
      .map((kind) => ({ name: 'rule' as const, to: { rule: { kind } } })),
    count(-60, 60).map((first) => ({
      name: 'rule' as const,
      to: { rule: { kind: 'by-hand' as const, first: [first as Slot] } },
    })),
    count(0, 7).map((choice) => ({ name: 'choose-placement' as const, to: { choice } })),
    count(1, 50).map((row) => ({ name: 'first-row' as const, to: { position: { kind: 'from-row' as const, row } } })),
    fc.record({ rise: count(0, 9), hasOwnBall: fc.boolean() }).map((group) => ({
      name: 'own-balls' as const,
      to: { groups: [{ ...startGroup('lighthouse', 1), ...group }] },
    })),
  )
  .map((change) => () => ({ ...change, kind: 'band', band: 0 }));

const projectStep: fc.Arbitrary<Step> = name.map((to) => () => ({
  name: 'rename-project',
  kind: 'project',
  to: { name: to },
}));

/** Another colour, or a third yarn. */
const paletteStep: fc.Arbitrary<Step> = fc.boolean().map((isThird) => (project) => ({
  name: 'yarns',
  kind: 'palette',
  motifs: project.motifs,
  yarns: isThird
    ? [...project.yarns.slice(0, 2), { name: 'kelp', colour: '#4a5a2a', tex: null }, ...project.yarns.slice(3)]
    : project.yarns.map((yarn) => ({ ...yarn, colour: '#112233' })),
}));

/** A motif more behind the others, or the last one less; the first one stays, as a band uses it. */
const motifsStep: fc.Arbitrary<Step> = fc.boolean().map((isMore) => ({ motifs }) => {
  const last = motifs.at(-1) as Motif;
  if (!isMore && motifs.length > 1) return { name: 'delete-motif', kind: 'motifs', motifs: motifs.slice(0, -1) };
  return { name: 'duplicate-motif', kind: 'motifs', motifs: [...motifs, { ...last, id: `copy-${motifs.length}` }] };
});

/** A band more above the others, or the last one less; the first one stays for the steps that change it. */
const bandsStep: fc.Arbitrary<Step> = fc.boolean().map((isMore) => ({ bands }) => {
  const last = bands.at(-1) as Band;
  if (!isMore && bands.length > 1) return { name: 'remove-band', kind: 'bands', bands: bands.slice(0, -1) };
  return { name: 'add-band', kind: 'bands', bands: [...bands, { ...last, position: { kind: 'from-row', row: 1 } }] };
});

/** A fill more, another border for the last one, or the last one less. */
const fillsStep: fc.Arbitrary<Step> = fc
  .record({ way: fc.constantFrom('add', 'border', 'remove'), left: count(0, 9), row: count(1, 90) })
  .map(({ way, left, row }) => ({ motifs, fills }) => {
    const last = fills.at(-1);
    if (way === 'add' || !last) {
      return { name: 'add-fill', kind: 'fills', fills: [...fills, startFill(motifs[0]?.id ?? '', row)] };
    }
    if (way === 'remove') return { name: 'remove-fill', kind: 'fills', fills: fills.slice(0, -1) };
    const border = { left, right: 0 };
    return { name: 'fill-border', kind: 'fills', fills: [...fills.slice(0, -1), { ...last, border }] };
  });

export const anyStep: fc.Arbitrary<Step> = fc.oneof(
  { arbitrary: paintStep, weight: 3 },
  motifStep,
  pieceStep,
  bandStep,
  projectStep,
  paletteStep,
  motifsStep,
  bandsStep,
  fillsStep,
);

function firstMotif(project: Project): string {
  return project.motifs[0]?.id ?? '';
}
