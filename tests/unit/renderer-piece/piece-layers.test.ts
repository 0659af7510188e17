/** Which layers of the piece are drawn again, and where, for what has changed. */
import { describe, expect, it } from 'vitest';
import type { ProjectAt } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { pieceDrawingWords } from '@shared/words/piece-drawing.ts';
import { Viewport } from '../../../src-renderer/canvas/viewport.ts';
import { NOTHING_SHOWN } from '../../../src-renderer/piece/drawing/finding-marks.ts';
import { LaidView } from '../../../src-renderer/piece/drawing/laid-view.ts';
import { lookOf } from '../../../src-renderer/piece/drawing/look.ts';
import {
  draggedPicture,
  pieceLayers,
  pictureOf,
  type ShownPiece,
} from '../../../src-renderer/piece/drawing/piece-drawing.ts';
import type { PieceScene } from '../../../src-renderer/piece/drawing/scene.ts';
import { TubeView } from '../../../src-renderer/piece/closed/tube-view.ts';
import { readingOf } from '../../../src-renderer/piece/moving/reading.ts';
import { standingOf } from '../../../src-renderer/piece/moving/standing.ts';
import { paintsOf } from '../paints.ts';
import { planOf, twoGroups } from './projects.ts';

function sceneOf(project: ProjectAt, to: Partial<PieceScene> = {}): PieceScene {
  return {
    plan: planOf(project),
    project,
    showsFloats: true,
    showsWraps: true,
    feeding: null,
    shows: 'needles',
    showsStitches: false,
    look: lookOf(project, () => '#123456'),
    font: 'sans-serif',
    spaceWords: words.piece.stage.spaces,
    fold: words.piece.stage.fold,
    groupNames: pieceDrawingWords.group,
    profileTitle: pieceDrawingWords.profile.title,
    profileTop: 0,
    stripTop: 0,
    chosen: null,
    ...to,
  };
}

/** L8–L6 and R4–R6 on needles L10 … R10, on rows 3 and 4 of 6. */
const SCENE = sceneOf(twoGroups());
const PICTURE = pictureOf(SCENE);
const BEFORE: ShownPiece = { scene: SCENE, picture: PICTURE, dragged: null, spot: null, found: NOTHING_SHOWN };

/** The second group dragged so many needles to the right. */
function dragged(needles: number): ShownPiece {
  const { plan } = SCENE;
  const from = standingOf(plan, 0);
  const first = from.first.map((slot, index) => (index === 1 ? slot + needles : slot)) as never;
  const reading = readingOf(plan, 0, 1, { ...from, first });
  return { ...BEFORE, dragged: reading, picture: draggedPicture(PICTURE, reading, SCENE) };
}

/**
 * Of the cells with what stays at rest, of what is pointed at then, of what stays while a group is dragged, of what goes
 * with it, and of what is pointed at meanwhile.
 */
const changed = (before: ShownPiece, after: ShownPiece) => pieceLayers().map((layer) => layer.changed(before, after));

describe('what is drawn again of the piece', () => {
  it('is the cells of the group and what goes with it while it is dragged; the rest when it is taken', () => {
    // Columns from L10: R4 … R6 are 13 … 15, a needle further 14 … 16; rows 3 and 4 are 2 and 3.
    const box = { column: 13, row: 2, width: 4, height: 2 };
    // The strands of what is pointed at go while a group is in the hand.
    expect(changed(BEFORE, dragged(1))).toEqual([true, true, true, true, true]);
    expect(changed(dragged(1), dragged(2))).toEqual([[{ ...box, column: 14 }], false, false, true, false]);
    expect(changed(dragged(1), BEFORE)).toEqual([true, true, true, true, true]);
  });

  it('is only the mark of the stitch that is looked at as the pointer moves', () => {
    const spot = { needle: 2, row: 3 };
    expect(changed(BEFORE, { ...BEFORE, spot })).toEqual([false, true, false, false, true]);
    expect(changed({ ...BEFORE, spot }, { ...BEFORE, spot: { ...spot } })).toEqual([false, false, false, false, false]);
  });

  it('is all of it when strands are hidden, and for another plan', () => {
    const hidden = sceneOf(twoGroups(), { plan: SCENE.plan, showsFloats: false });
    expect(changed(BEFORE, { ...BEFORE, scene: hidden })).toEqual([true, true, true, true, true]);
    expect(changed(BEFORE, { ...BEFORE, scene: sceneOf(twoGroups()) })).toEqual([true, true, true, true, true]);
  });
});

describe('a layer that says it is blank', () => {
  const laid = new LaidView(new Viewport(10, 7, 300, 500), SCENE);
  const spot = { needle: 2, row: 3 };
  const [place] = SCENE.plan.groups.map(
    ({ firstRow, lastRow }) => ({ rows: [firstRow, lastRow], needles: null }) as const,
  );
  const shown: readonly (readonly [string, ShownPiece, readonly (boolean | undefined)[]])[] = [
    ['at rest', BEFORE, [undefined, true, true, true, true]],
    ['while a stitch is looked at', { ...BEFORE, spot }, [undefined, false, true, true, true]],
    ['while a group is dragged', dragged(1), [undefined, true, false, false, true]],
    ['while a group is dragged over a stitch', { ...dragged(1), spot }, [undefined, true, false, false, false]],
    [
      'where a finding was gone to',
      { ...BEFORE, found: { ...NOTHING_SHOWN, places: place ? [place] : [] } },
      [undefined, false, true, true, true],
    ],
  ];
  it.each(shown)('%s, paints nothing, and the others do', (_, scene, blank) => {
    const [, ...layers] = pieceLayers();
    expect(pieceLayers().map((layer) => layer.isBlank?.(scene))).toEqual(blank);
    for (const layer of layers) expect(paintsOf(layer, laid, scene) === 0).toBe(layer.isBlank?.(scene) ?? false);
  });

  it('keeps no frame of a finding where a group was, while it is in the hand', () => {
    const found = { ...NOTHING_SHOWN, places: place ? [place] : [] };
    const [, atRest, , , inHand] = pieceLayers();
    if (!atRest || !inHand) throw new Error('A piece has five layers');
    expect(paintsOf(atRest, laid, { ...BEFORE, found })).toBeGreaterThan(0);
    expect(paintsOf(inHand, laid, { ...dragged(1), found })).toBe(0);
  });

  it('is not, once a group is chosen whose strands may be drawn', () => {
    const chosen = sceneOf(twoGroups(), { plan: SCENE.plan, chosen: SCENE.plan.groups[0] ?? null });
    expect(pieceLayers()[1]?.isBlank?.({ ...BEFORE, scene: chosen })).toBe(false);
  });
});

describe('what is taken hold of on the piece', () => {
  const laid = new LaidView(new Viewport(10, 7, 300, 500), SCENE);
  const nodes = (shown: ShownPiece) =>
    pieceLayers().map((layer) => layer.nodes?.(laid, shown, { width: 600, height: 520 }) ?? []);

  it('is each group where it stands, by its number in the plan', () => {
    const [still = [], ...others] = nodes(BEFORE);
    expect(others.flat()).toEqual([]);
    expect(still.map(({ key }) => key)).toEqual(['0', '1']);
    // L8 … L6 from 300 − 80 on, rows 3 and 4 from 500 − 14 up.
    const corners = [
      { x: 220, y: 472 },
      { x: 250, y: 472 },
      { x: 250, y: 486 },
      { x: 220, y: 486 },
    ];
    expect(still[0]?.corners).toEqual(expect.arrayContaining(corners));
  });

  it('goes to the layer of what is dragged under the same name, with all groups of its band', () => {
    const [rest, , still, moving = []] = nodes(dragged(2));
    expect([rest, still]).toEqual([[], []]);
    expect(moving.map(({ key }) => key)).toEqual(['0', '1']);
    // R4 … R6 from 300 + 30 on, two needles further.
    expect(Math.min(...(moving[1]?.corners ?? []).map(({ x }) => x))).toBe(350);
  });

  it('is as wide and tall as stitches of the section are: twice on a rib of half the gauge', () => {
    // Rows 1 and 2 at 14 stitches and 20 rows in 10 cm, under rows 3 … 6 at 28 and 40; the group is dragged down to the rib.
    const rib = { name: 'rib', rows: 2, isLined: false, gauge: { stitches: 14, rows: 20 }, tension: '' };
    const ribbed = sceneOf(twoGroups({ piece: { gauge: { stitches: 28, rows: 40 }, sections: [rib] } }));
    const seen = new LaidView(new Viewport(10, 7, 300, 500), ribbed);
    const from = standingOf(ribbed.plan, 0);
    const down = readingOf(ribbed.plan, 0, 1, { ...from, firstRow: 1 });
    const [still, moving] = [null, down].map((reading, layer) => {
      const shown = { scene: ribbed, picture: PICTURE, dragged: reading, spot: null, found: NOTHING_SHOWN };
      const node = pieceLayers()[3 * layer]?.nodes?.(seen, shown, { width: 600, height: 520 })[1];
      const [xs, ys] = [node?.corners.map(({ x }) => x) ?? [], node?.corners.map(({ y }) => y) ?? []];
      return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
    });
    // R4 … R6, on rows 3 and 4 over 28 pixels of the rib, and on rows 1 and 2 of it.
    expect(still).toEqual([330, 360, 458, 472]);
    expect(moving).toEqual([360, 420, 472, 500]);
  });
});

describe('a view that is made again', () => {
  it('is the same where everything is seen in its place', () => {
    const laid = (x: number): LaidView => new LaidView(new Viewport(10, 7, x, 500), SCENE);
    expect(laid(300).isSame(laid(300))).toBe(true);
    expect(laid(300).isSame(laid(301))).toBe(false);
    expect(new TubeView(2, 300, 500).isSame(new TubeView(2, 300, 500))).toBe(true);
    expect(new TubeView(2, 300, 500).isSame(new TubeView(2, 300, 501))).toBe(false);
  });
});
