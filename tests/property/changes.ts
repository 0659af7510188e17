/** Random changes to the sample project, each one that a person could make. */
import fc from 'fast-check';
import { gridFromText, patchCells } from '@shared/grid/index.ts';
import type { Slot } from '@shared/bed/index.ts';
import type { Motif } from '@shared/motif/index.ts';
import { allOversOf, bandsOf, type Band } from '@shared/pattern/index.ts';
import {
  addSize,
  changeCopies,
  changeOf,
  changeSize,
  freeSizeName,
  insertPattern,
  projectAt,
  removePattern,
  type Project,
  type ProjectAt,
  insertInto,
  motifOf,
  moveWithin,
  paintCells,
  removeFrom,
  removeSize,
  renameSize,
  setPattern,
  setMotif,
  setPiece,
  setPieceInSizes,
  setProject,
  setUnderlay,
  sizesOf,
  startAllOver,
  startGroup,
  type Change,
} from '@shared/project/index.ts';
import { anyUnderlay } from './projects.ts';

/** A change that fits the project at the time it is made, and may depend on it. */
export type Step = (project: Project) => Change;

const name = fc.string({ minLength: 1, maxLength: 12, unit: 'grapheme-ascii' });
const side = fc.constantFrom('left' as const, 'right' as const);
/** What becomes of a list, and where in it. */
const wayInList = fc.record({ way: fc.constantFrom('insert', 'remove', 'move'), at: fc.nat(), to: fc.nat() });
const count = (least: number, most: number) => fc.integer({ min: least, max: most });

/** Looked at in one of its sizes, and from one of its pieces. */
function lookedAt({ ...project }: Project, which: number): ProjectAt {
  const [piece, size] = [project.pieces[which % project.pieces.length], project.sizes[which % project.sizes.length]];
  return projectAt(project, { piece: piece?.id ?? '', size: size?.id ?? '' });
}

/** An id that nothing of the project has. */
function freeId(project: Project): string {
  const ids = new Set(JSON.stringify(project).match(/"new-\d+"/g));
  let number = 1;
  while (ids.has(`"new-${number}"`)) number++;
  return `new-${number}`;
}

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
    return changeOf('draw', paintCells(motif.id, patch));
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
  .map(
    ({ name: step, to }) =>
      (project) =>
        changeOf(step, setMotif(firstMotif(project), to)),
  );

/** The picture behind the first motif moved; where there is none it comes first. */
const underlayStep: fc.Arbitrary<Step> = fc.tuple(anyUnderlay, count(-99, 99)).map(([picture, left]) => (project) => {
  const { id, underlay } = motifOf(project, firstMotif(project));
  const moved = setUnderlay(id, { left });
  if (underlay) return changeOf('move-underlay', moved);
  return changeOf('add-underlay', setMotif(id, { underlay: picture }), ...(picture ? [moved] : []));
});

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
    fc
      .constantFrom(undefined, { stitches: 400 }, { rows: 250.5, hemRows: 0 })
      .map((lengths) => ({ name: 'piece-size' as const, to: { lengths } })),
    side.map((startSide) => ({ name: 'start-side' as const, to: { startSide } })),
    fc
      .constantFrom('usual' as const, 'open' as const)
      .map((begins) => ({ name: 'piece-details' as const, to: { begins } })),
    fc.record({ stitches: count(0, 9), mm: fc.constantFrom(null, 25) }).map((floatLimit) => ({
      name: 'float-limit' as const,
      to: { floatLimit },
    })),
  )
  .chain((made) => fc.nat(6).map((which) => ({ ...made, which })))
  .map(
    ({ name: step, to, which }) =>
      (project) =>
        changeOf(step, ...setPiece(lookedAt(project, which), to)),
  );

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
  .chain((made) => fc.nat(6).map((which) => ({ ...made, which })))
  .map(
    ({ name: step, to, which }) =>
      (project) =>
        changeOf(step, setPattern(lookedAt(project, which), 'band', 0, to)),
  );

const projectStep: fc.Arbitrary<Step> = name.map((to) => () => changeOf('rename-project', setProject({ name: to })));

/** Another colour, or a third yarn. */
const paletteStep: fc.Arbitrary<Step> = fc.boolean().map((isThird) => (project) => {
  const yarns = isThird
    ? [
        ...project.yarns.slice(0, 2),
        { name: 'kelp', colour: '#4a5a2a', count: null, onHand: null },
        ...project.yarns.slice(3),
      ]
    : project.yarns.map((yarn) => ({ ...yarn, colour: '#112233' }));
  return changeOf('yarns', setProject({ yarns }));
});

/** A motif more somewhere, one that no pattern uses less, or one that stands elsewhere. */
const motifsStep: fc.Arbitrary<Step> = wayInList.map(({ way, at, to }) => (project) => {
  const { motifs, pieces } = project;
  const like = motifs[at % motifs.length] as Motif;
  const used = pieces
    .flatMap((piece) => [...bandsOf(piece).flatMap(({ groups }) => groups), ...allOversOf(piece)])
    .map(({ motif }) => motif);
  if (way === 'move') return changeOf('duplicate-motif', moveWithin('motifs', like.id, to % motifs.length));
  if (way === 'remove' && !used.includes(like.id)) return changeOf('delete-motif', removeFrom('motifs', like.id));
  const copy = { ...like, id: freeId(project) };
  return changeOf('duplicate-motif', insertInto('motifs', to % (motifs.length + 1), copy));
});

/** A band more behind the others, or one of several less. */
const bandsStep: fc.Arbitrary<Step> = wayInList.map(({ way, at, to }) => (whole) => {
  const project = lookedAt(whole, to);
  const place = at % bandsOf(project).length;
  if (way === 'remove' && bandsOf(project).length > 1)
    return changeOf('remove-band', removePattern(project, 'band', place));
  const band: Band = { ...(bandsOf(project)[place] as Band), position: { kind: 'from-row', row: 1 } };
  return changeOf('add-band', insertPattern(project, freeId(whole), band));
});

/** A pattern that stands elsewhere in the list. */
const patternsStep: fc.Arbitrary<Step> = fc.tuple(fc.nat(), fc.nat()).map(([at, to]) => ({ pieces }) => {
  const piece = pieces[at % pieces.length] as (typeof pieces)[number];
  const { patterns } = piece;
  const id = patterns[at % patterns.length]?.id ?? '';
  return changeOf('move-group', { kind: 'move', list: 'patterns', piece: piece.id, id, at: to % patterns.length });
});

/** A piece more like another, one of several less, or one that stands elsewhere; its name, and how many are knitted. */
const piecesStep: fc.Arbitrary<Step> = wayInList.map(({ way, at, to }) => (project) => {
  const { pieces } = project;
  const piece = pieces[at % pieces.length] as (typeof pieces)[number];
  if (way === 'move') return changeOf('move-piece', moveWithin('pieces', piece.id, to % pieces.length));
  if (way === 'remove' && pieces.length > 1) return changeOf('remove-piece', removeFrom('pieces', piece.id));
  if (to % 2 === 0) return changeOf('knit-times', setPieceInSizes(piece.id, { knit: 1 + (at % 4) }));
  const id = freeId(project);
  const patterns = piece.patterns.map((pattern, number) => ({ ...pattern, id: `${id}-${number + 1}` }));
  return changeOf('duplicate-piece', insertInto('pieces', to % (pieces.length + 1), { ...piece, id, patterns }));
});

/** Another size, its numbers, and the copies of a group in it: each changes several things at once. */
const sizesStep: fc.Arbitrary<Step> = fc
  .record({ way: fc.constantFrom('add', 'rename', 'copies', 'remove'), at: fc.nat(), across: count(1, 5) })
  .map(({ way, at, across }) => (whole) => {
    const project = lookedAt(whole, at);
    const sizes = sizesOf(project);
    const index = at % sizes.length;
    if (way === 'rename')
      return renameSize(
        project,
        index,
        freeSizeName(project, (number) => `renamed ${number}`),
      );
    if (way === 'copies') return changeCopies(project, index, 0, 0, across);
    if (way === 'remove' && sizes.length > 1) return removeSize(project, index);
    if (sizes.length > 4) return changeSize(project, index, { hemRows: across });
    return addSize(
      project,
      at % (sizes.length + 1),
      freeSizeName(project, (number) => `size ${number}`),
      freeId(whole),
    );
  });

/** A fill more, another border for the last one, or the last one less. */
const fillsStep: fc.Arbitrary<Step> = fc
  .record({ way: fc.constantFrom('add', 'border', 'remove'), left: count(0, 9), row: count(1, 90), which: fc.nat(6) })
  .map(({ way, left, row, which }) => (whole) => {
    const project = lookedAt(whole, which);
    const last = allOversOf(project).length - 1;
    if (way === 'add' || last < 0) {
      return changeOf(
        'add-all-over',
        insertPattern(project, freeId(whole), startAllOver(project.motifs[0]?.id ?? '', row)),
      );
    }
    if (way === 'remove') return changeOf('remove-all-over', removePattern(project, 'all-over', last));
    return changeOf('all-over-border', setPattern(project, 'all-over', last, { border: { left, right: 0 } }));
  });

export const anyStep: fc.Arbitrary<Step> = fc.oneof(
  { arbitrary: paintStep, weight: 3 },
  motifStep,
  underlayStep,
  pieceStep,
  bandStep,
  projectStep,
  paletteStep,
  motifsStep,
  bandsStep,
  patternsStep,
  piecesStep,
  fillsStep,
  sizesStep,
);

function firstMotif(project: Project): string {
  return project.motifs[0]?.id ?? '';
}
