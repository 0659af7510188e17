/** All-overs that are added, moved on the needles, and in the way of groups. */
import { describe, expect, it } from 'vitest';
import type { CommandOf } from '@shared/host/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { allOversOf, type AllOver } from '@shared/pattern/index.ts';
import {
  afterChange,
  changeOf,
  insertPattern,
  removePattern,
  setPattern,
  startAllOver,
  type ProjectAt,
} from '@shared/project/index.ts';
import { commandsOf } from '../../../src-renderer/commands/command.ts';
import { allOverActions } from '../../../src-renderer/piece/all-over/actions.ts';
import { freeRows, newAllOver, wholeAllOver } from '../../../src-renderer/piece/all-over/all-overs.ts';
import { groundOf, standingOf, walk } from '../../../src-renderer/piece/moving/standing.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { planOf, projectOf, twoGroups } from './projects.ts';
import { onRows, settled } from '../../written-projects.ts';

/** Groups on rows 3 and 4 of 6, and all-overs. */
const filled = (...fills: Partial<AllOver>[]): ProjectAt =>
  settled(twoGroups(), {
    patterns: [...twoGroups().patterns, ...fills.map((fill) => ({ ...startAllOver('m', 1), ...fill }))],
  });

describe('a new fill', () => {
  it.each([
    ['goes from the second row to the top of an empty piece', { ...filled(), patterns: [] }, [2, null]],
    ['goes above what is there', filled(), [5, null]],
    ['goes below where there is nothing above', filled({ position: onRows(5, 6) }), [2, 2]],
    ['starts low where there is no room', filled({ position: onRows(5) }, { position: onRows(1, 2) }), [2, null]],
  ] as const)('%s', (_, project, rows) => {
    const fill = newAllOver('m', planOf(project));
    expect(fill.position).toEqual(onRows(rows[0], rows[1]));
  });

  it('changes, and goes, among the others', () => {
    const project = filled({ position: onRows(5) }, { position: onRows(1, 2) });
    const added = afterChange(
      project,
      changeOf('add-all-over', insertPattern(project, 'fill-3', startAllOver('m', 3))),
    );
    expect(allOversOf(added).map(({ position }) => position)).toEqual([onRows(5), onRows(1, 2), onRows(3)]);
    expect(
      allOversOf(afterChange(project, changeOf('all-over-lie', setPattern(project, 'all-over', 1, { step: 2 })))),
    ).toMatchObject([{ step: 0 }, { step: 2 }]);
    expect(
      allOversOf(afterChange(project, changeOf('remove-all-over', removePattern(project, 'all-over', 0)))),
    ).toMatchObject([{ position: onRows(1, 2) }]);
  });
});

describe('an all-over in place of what is there', () => {
  it.each([
    ['has nothing to replace on an empty piece', { ...filled(), patterns: [] }, [], [2, 6]],
    ['comes in place of a band', filled(), ['band 0'], [5, 6]],
    [
      'comes in place of all that stand in its rows',
      filled({ position: onRows(5, 6) }),
      ['band 0', 'all-over 0'],
      [2, 2],
    ],
    ['leaves what lies below it', filled({ position: onRows(1, 1) }), ['band 0'], [5, 6]],
    [
      'is offered where no rows are free',
      filled({ position: onRows(5) }, { position: onRows(2, 2) }),
      ['band 0', 'all-over 0', 'all-over 1'],
      null,
    ],
  ] as const)('%s', (_, project, standing, free) => {
    const plan = planOf(project);
    const whole = wholeAllOver('m', plan);
    expect(whole).toMatchObject({ firstRow: 2, lastRow: 6, allOver: { position: onRows(2) } });
    expect(whole.standing.map(({ kind, number }) => `${kind} ${number}`)).toEqual(standing);
    const room = freeRows(plan);
    expect(room && [room.firstRow, room.lastRow]).toEqual(free);
  });

  it('starts two rows above a hem, and leaves what is knitted into that', () => {
    const hem = { hemRows: 4, shape: { kind: 'rectangle', stitches: 20, rows: 12 } } as const;
    const project = projectOf(['###'], [1], { piece: hem, band: { position: { kind: 'from-row', row: 3 } } });
    expect(wholeAllOver('m', planOf(project))).toMatchObject({
      firstRow: 6,
      lastRow: 12,
      standing: [],
      allOver: { position: { from: { kind: 'above-hem', rows: 1 } } },
    });
  });
});

describe('a group on its way', () => {
  it('stops at a fill, and goes past one beside it', () => {
    const up = (project: ProjectAt) => {
      const plan = planOf(project);
      const { standing, stop } = walk(groundOf(plan, 0), standingOf(plan, 0), 0, { first: -8, firstRow: 5 });
      return { firstRow: standing.firstRow, stop };
    };
    expect(up(filled({ position: onRows(6) }))).toEqual({ firstRow: 4, stop: 'all-over' });
    // Twelve stitches are kept plain at the left; the other group, on R4 to R6, meets the fill.
    expect(up(filled({ position: onRows(6), border: { left: 12, right: 0 } }))).toEqual({
      firstRow: 4,
      stop: 'all-over',
    });
    expect(up(filled({ position: onRows(6), border: { left: 17, right: 0 } }))).toEqual({ firstRow: 5, stop: null });
  });
});

describe('the commands of a fill', () => {
  function run(session: Session, id: CommandOf<'all-overs'>, chosen = { allOver: 0, isAllOverNew: false }): void {
    const command = commandsOf(allOverActions(session, chosen))[id];
    if (command.whyNot() !== null) throw new Error(`${id} cannot be run`);
    void command.run();
  }
  const open = (project: ProjectAt): Session => new Session(settled(project).whole, true);

  it('move the pattern as it is shown: to the right as worn is to the left on the needles', () => {
    const session = open(filled({ position: onRows(5) }));
    session.look({ pieceShows: 'needles' });
    run(session, 'all-over-right');
    expect(allOversOf(session.current)[0]?.shift).toBe(1);
    session.look({ pieceShows: 'worn' });
    run(session, 'all-over-right');
    run(session, 'all-over-right');
    expect(allOversOf(session.current)[0]?.shift).toBe(-1);
  });

  it('are a step of undo with every press, and one as long as the key is held', () => {
    const session = open(filled({ position: onRows(5) }));
    const { 'all-over-right': right } = allOverActions(session, { allOver: 0, isAllOverNew: false });
    const shifts = (): number[] => {
      const found: number[] = [];
      for (; session.undoName; session.undo()) found.push(allOversOf(session.current)[0]?.shift ?? 0);
      return found;
    };
    for (let press = 0; press < 3; press++) void right.run();
    expect(shifts().map(Math.abs)).toEqual([3, 2, 1]);
    for (const isHeld of [false, true, true, false, true]) void right.run(isHeld);
    expect(shifts().map(Math.abs)).toEqual([5, 3]);
  });

  it('put a fill in place of what stands in its rows, as one step', () => {
    const session = open(filled({ position: onRows(5) }));
    const before = session.current;
    const chosen = { allOver: 0, isAllOverNew: false };
    run(session, 'all-over-replace', chosen);
    expect(session.current.patterns).toMatchObject([{ kind: 'all-over', motif: 'm', position: onRows(2) }]);
    // The panel is told to bring it into view.
    expect([session.undoName, chosen]).toEqual(['replace-by-all-over', { allOver: 0, isAllOverNew: true }]);
    session.undo();
    expect(session.current.patterns).toEqual(before.patterns);
    const empty = open({ ...filled(), patterns: [] });
    expect(commandsOf(allOverActions(empty, chosen))['all-over-replace'].whyNot()).toBe(
      'Nothing stands on the rows that an all-over would take.',
    );
  });

  it('add a fill with the motif at hand and choose it, and remove the chosen one', () => {
    const session = open({ ...filled(), patterns: [] });
    const chosen = { allOver: 0, isAllOverNew: false };
    run(session, 'all-over-add', chosen);
    expect(allOversOf(session.current)).toMatchObject([{ motif: 'm', position: onRows(2) }]);
    run(session, 'all-over-add', chosen);
    expect(chosen.allOver).toBe(1);
    // There is no room for another one: the plan says so.
    expect(problemOf(tryPlan(session.current)).code).toBe('fills-overlap');
    run(session, 'all-over-remove', chosen);
    expect([allOversOf(session.current).length, chosen.allOver]).toEqual([1, 0]);
  });
});

function tryPlan(project: ProjectAt): unknown {
  try {
    return planOf(project);
  } catch (thrown) {
    return thrown;
  }
}
