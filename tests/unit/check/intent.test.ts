/** Remedies are taken on the project as it is then, not as it was when they were found. */
import { describe, expect, it } from 'vitest';
import type { PlacedAllOver } from '@shared/fabric/index.ts';
import { changeFor, pieceAfter, seamFits, type Intent } from '@shared/check/index.ts';
import { makePlan } from '@shared/plan/index.ts';
import { allOversOf, bandsOf } from '@shared/pattern/index.ts';
import {
  afterChange,
  changeOf,
  pieceIn,
  setPattern,
  setPiece,
  startAllOver,
  type Change,
  type ProjectAt,
} from '@shared/project/index.ts';
import { settled } from '../../written-projects.ts';
import { projectWith } from '../fabric/pieces.ts';
import { COLUMNS, remediesOf } from './found.ts';

/** A fill of six stitches on 26, which is off by two in the seam. */
const FILLED = settled(projectWith({ motif: ['XX.X..'], copies: [], stitches: 26, rows: 3 }), {
  patterns: [{ ...startAllOver('motif', 1), unit: 'whole' }],
});

function taken(project: ProjectAt, intent: Intent): ProjectAt {
  return afterChange(project, changeFor(project, intent) as Change);
}

describe('a remedy that is taken after something else was changed', () => {
  it('gives each group its ball and leaves the groups as they are then', () => {
    const remedy = remediesOf(COLUMNS)
      .map(({ intent }) => intent)
      .find(({ code }) => code === 'own-balls') as Intent;
    const groups = bandsOf(COLUMNS)[0]?.groups.map((group) => ({ ...group, isMirrored: true, up: 1, rise: 1 })) ?? [];
    const since = afterChange(COLUMNS, changeOf('mirror-group', setPattern(COLUMNS, 'band', 0, { groups })));
    expect(bandsOf(taken(since, remedy))[0]?.groups).toEqual(groups.map((group) => ({ ...group, hasOwnBall: true })));
  });

  it('makes the piece of then wider', () => {
    const plan = makePlan(pieceIn(FILLED));
    const { fewer } = seamFits(pieceIn(FILLED), plan, allOversOf(plan)[0] as PlacedAllOver);
    const shape = { kind: 'rectangle' as const, stitches: 26, rows: 9 };
    const since = afterChange(FILLED, changeOf('piece-size', ...setPiece(FILLED, { shape })));
    expect(taken(since, (fewer as { intent: Intent }).intent).piece.shape).toEqual({ ...shape, stitches: 24 });
  });

  it('puts the piece where the bed of then holds it', () => {
    const beside = (needles: number): ProjectAt => ({
      ...COLUMNS,
      machine: { ...COLUMNS.machine, bed: { needles, pitchMm: 4.5 } },
      piece: { ...COLUMNS.piece, offset: 30 },
    });
    // 20 stitches in the middle of 40 needles.
    expect(taken(beside(40), { code: 'onto-bed' }).piece.offset).toBe(0);
    expect(changeFor(beside(19), { code: 'onto-bed' })).toBeNull();
    expect(changeFor(beside(200), { code: 'onto-bed' })).toBeNull();
  });

  it.each<[string, Intent, Partial<ProjectAt>]>([
    ['a band that is gone', { code: 'own-balls', bands: [0] }, { patterns: [] }],
    ['a lining that is there', { code: 'lining' }, { piece: { ...COLUMNS.piece, isLined: true } }],
    [
      'anchors that are wished for already',
      { code: 'anchors', patterns: [0], longest: 5 },
      {
        patterns: COLUMNS.patterns.map((own) => ({
          ...own,
          anchors: { longest: 5, isBehindFigure: false, byHand: [] },
        })),
      },
    ],
    ['a switch that is off', { code: 'end-needles-off' }, {}],
    [
      'a seam that takes stitches',
      { code: 'seam-takes', left: 1, right: 1 },
      { piece: { ...COLUMNS.piece, seamAllowance: { left: 2, right: 1 } } },
    ],
    ['stitches that there are not', { code: 'widen', by: -20 }, {}],
    [
      'a bed of any length',
      { code: 'onto-bed' },
      { machine: { ...COLUMNS.machine, bed: { needles: null, pitchMm: 4.5 } } },
    ],
  ])('has nothing to do with %s', (_, intent, to) => {
    expect(changeFor({ ...COLUMNS, ...to }, intent)).toBeNull();
    expect(pieceAfter(pieceIn({ ...COLUMNS, ...to }), intent)).toBeNull();
  });
});

describe('a remedy that is tried on the piece', () => {
  const bed = { needles: 40, pitchMm: 4.5 };
  it.each<[Intent, ProjectAt]>([
    [{ code: 'own-balls', bands: [0] }, COLUMNS],
    [{ code: 'lining' }, COLUMNS],
    [
      { code: 'end-needles-off' },
      { ...COLUMNS, patterns: bandsOf(COLUMNS).map((band) => ({ ...band, endNeedles: true })) },
    ],
    [
      { code: 'onto-bed' },
      { ...COLUMNS, machine: { ...COLUMNS.machine, bed }, piece: { ...COLUMNS.piece, offset: 30 } },
    ],
    [{ code: 'widen', by: -2 }, FILLED],
    [{ code: 'seam-takes', left: 1, right: 2 }, FILLED],
  ])('makes the piece that taking $code makes', (intent, project) => {
    const after = pieceAfter(pieceIn(project), intent);
    expect(after).toEqual(pieceIn(taken(settled(project), intent)));
    expect(after).not.toEqual(pieceIn(project));
  });
});
