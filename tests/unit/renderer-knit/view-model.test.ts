/** What the Knit bench looks at: pieces one after the other, under whatever name and file their project has. */
import { describe, expect, it, vi } from 'vitest';
import { START_AIDS } from '@shared/host/index.ts';
import type { PieceKey } from '@shared/journal/index.ts';
import { problemError } from '@shared/problem/index.ts';
import { changeOf, projectAt, sampleProject, setPieceInSizes, setProject } from '@shared/project/index.ts';
import { words } from '@shared/words/index.ts';
import { PieceCounter } from '../../../src-renderer/knit/piece-counter.ts';
import { KnitViewModel, type CounterOf } from '../../../src-renderer/knit/view-model.ts';
import { Session } from '../../../src-renderer/session/session.ts';
import { Disks } from './disk.ts';
import { orderOf } from './order-of.ts';

const DESIGN = orderOf(projectAt(sampleProject()));
const FILE = { path: '/home/knitter/sleeve.walewright', name: 'sleeve.walewright', stamp: 'first' };
const counterOf: CounterOf = (...args) => new PieceCounter(...args);

/** A bench with the sample, and what its component does: it looks again whenever the session says that something changed. */
function bench() {
  const disks = new Disks();
  const session = new Session(sampleProject(), true);
  const viewModel = new KnitViewModel(session, disks.host);
  const of = (piece = 'p', copy = viewModel.copy): PieceKey => ({
    project: { name: session.projectName, path: session.file?.path ?? null },
    piece: { id: piece, name: 'sleeve' },
    size: { id: 's', name: '' },
    copy,
  });
  const look = (piece?: string, copy?: number): void => viewModel.look(of(piece, copy), DESIGN, counterOf);
  session.subscribe(() => look());
  const problems: string[] = [];
  session.notify = (notice) => void (notice?.kind === 'problem' && problems.push(notice.problem.code));
  const reading = (): number | undefined => viewModel.counted?.place.reading;
  const reads = (wanted: number) => vi.waitFor(() => expect(reading()).toBe(wanted));
  return { disks, session, viewModel, of, look, problems, reading, reads };
}

const moved = ({ asked }: Disks): string[] => asked.filter((method) => method.startsWith('knitting.savedAs'));

describe('the bench beside the machine', () => {
  it('counts one row for a key that is held, and can count none before it is known where the knitter is', async () => {
    const { viewModel, look, reads, disks, of } = bench();
    const { 'row-done': done, 'row-back': back } = viewModel.commands;
    look();
    expect(done.whyNot()).toBe(words.whyNot.notKnitted);
    await reads(0);
    expect(done.whyNot()).toBeNull();
    await done.run();
    await done.run(true);
    await done.run(true);
    await reads(1);
    await done.run();
    await reads(2);
    await back.run(true);
    await back.run();
    await reads(1);
    expect(disks.of(of()).entries.map(({ event }) => event.kind)).toEqual(['row-done', 'row-done', 'back']);
  });

  it('goes with a project that is saved under a name, and reads nothing anew', async () => {
    const { viewModel, session, look, reads, disks, of } = bench();
    look();
    await viewModel.happened({ kind: 'row-done' });
    const before = disks.of(of());
    session.saved(session.project, FILE);
    await viewModel.happened({ kind: 'row-done' });
    await reads(2);
    expect(moved(disks)).toEqual([`knitting.savedAs ${session.projectName} → ${FILE.path}`]);
    expect(of().project.path).toBe(FILE.path);
    expect(disks.of(of())).toBe(before);
    expect(before.entries).toHaveLength(2);
    expect(disks.asked.filter((method) => method === 'knitting.read')).toHaveLength(1);
    // Saved once more to the same file, nothing has another name.
    session.saved(session.project, { ...FILE, stamp: 'second' });
    expect(moved(disks)).toHaveLength(1);
  });

  it('writes no row to a place that its journal has not come to yet', async () => {
    const { viewModel, session, look, reads, disks, of } = bench();
    look();
    await viewModel.happened({ kind: 'row-done' });
    let arrive = (): void => undefined;
    disks.held.set('knitting.savedAs', new Promise((resolve) => (arrive = resolve)));
    session.saved(session.project, FILE);
    const row = viewModel.happened({ kind: 'row-done' });
    await vi.waitFor(() => expect(moved(disks)).toHaveLength(1));
    expect(disks.asked.at(-1)).toBe(moved(disks)[0]);
    arrive();
    await row;
    await reads(2);
    expect(disks.of(of()).entries).toHaveLength(2);
  });

  it('goes with a project that is renamed, there and back by undo, one after the other', async () => {
    const { viewModel, session, look, reads, disks, of } = bench();
    look();
    await viewModel.happened({ kind: 'row-done' });
    const name = session.projectName;
    session.change(changeOf('rename-project', setProject({ name: 'Harbour cuff' })));
    session.undo();
    session.redo();
    await viewModel.happened({ kind: 'row-done' });
    await reads(2);
    expect(moved(disks)).toEqual([
      `knitting.savedAs ${name} → Harbour cuff`,
      `knitting.savedAs Harbour cuff → ${name}`,
      `knitting.savedAs ${name} → Harbour cuff`,
    ]);
    expect(disks.of(of()).entries).toHaveLength(2);
  });

  it('takes nothing along when another project is opened, and begins that one by itself', async () => {
    const { viewModel, session, look, reads, reading, disks, of } = bench();
    look();
    await viewModel.happened({ kind: 'row-done' });
    await reads(1);
    const before = of();
    // It has pieces of the same ids: a copy of the file, opened.
    session.replace(sampleProject(), FILE, true);
    expect(reading()).toBeUndefined();
    await reads(0);
    expect(moved(disks)).toEqual([]);
    expect(disks.of(before).entries).toHaveLength(1);
    expect(disks.of(of()).begun).toBeNull();
  });

  it('keeps pieces and copies apart, and shows nothing of one while the next is read', async () => {
    const { viewModel, look, reads, reading, disks, of } = bench();
    look('front');
    await viewModel.happened({ kind: 'row-done' });
    await viewModel.happened({ kind: 'row-done' });
    for (const [piece, copy] of [
      ['sleeve', 1],
      ['sleeve', 2],
    ] as const) {
      look(piece, copy);
      expect(reading()).toBeUndefined();
      await reads(0);
      await viewModel.happened({ kind: 'row-done' });
      await reads(1);
    }
    const entries = [of('front', 1), of('sleeve', 1), of('sleeve', 2)].map((key) => disks.of(key).entries.length);
    expect(entries).toEqual([2, 1, 1]);
    // Whoever comes back to a piece says first where the carriage stands.
    look('front', 1);
    await reads(2);
    expect(viewModel.counted?.place.phase).toBe('returning');
  });

  it('shows and tells nothing of a piece that is not looked at any more', async () => {
    const { viewModel, look, reads, reading, problems, disks } = bench();
    let answer = (): void => undefined;
    look('front');
    await reads(0);
    disks.held.set('knitting.begin', new Promise((resolve) => (answer = resolve)));
    const row = viewModel.happened({ kind: 'row-done' });
    const refused = viewModel.happened({ kind: 'go-to', to: 100_000 });
    look('sleeve');
    await reads(0);
    answer();
    await Promise.all([row, refused]);
    expect([reading(), problems]).toEqual([0, []]);
    // The row of the other one was counted all the same.
    look('front');
    await reads(1);
  });

  it('leads to the piece of the project that was counted last, until a row is counted here', async () => {
    const { disks, session, viewModel, of, look } = bench();
    const [piece, size] = [session.project.pieces[0]?.id ?? '', session.project.sizes[0]?.id ?? ''];
    const listed = (key: PieceKey, reading: number, isFinished = false) => ({
      kind: 'piece' as const,
      of: key,
      reading,
      last: 140,
      isFinished,
      carriageAt: 'left' as const,
      countedAt: '2026-11-27T10:00:00.000Z',
    });
    session.change(changeOf('knit-times', setPieceInSizes(piece, { knit: 2 })));
    const key = { ...of(), piece: { id: piece, name: 'sleeve' }, size: { id: size, name: '' } };
    const ofAnother = { ...key, project: { name: 'another', path: null } };
    disks.listed = [
      { kind: 'unusable', file: 'one', problem: problemError('journal-not-ours', {}).problem },
      listed(ofAnother, 90),
      listed({ ...key, piece: { id: 'taken-away', name: 'cuff' } }, 80),
      listed({ ...key, copy: 3 }, 70),
      listed({ ...key, copy: 2 }, 61),
      listed(key, 140),
    ];
    look(piece);
    await vi.waitFor(() => expect(viewModel.countedElsewhere).toMatchObject({ reading: 61, of: { copy: 2 } }));
    viewModel.goToLast();
    expect(viewModel.copy).toBe(2);
    viewModel.look({ ...key, copy: 2 }, DESIGN, counterOf);
    expect(viewModel.countedElsewhere).toBeNull();
    viewModel.look(key, DESIGN, counterOf);
    expect(viewModel.countedElsewhere).not.toBeNull();
    await viewModel.happened({ kind: 'row-done' });
    expect(viewModel.countedElsewhere).toBeNull();
  });

  it('leads nowhere by an answer that comes once a row was counted here', async () => {
    const { disks, session, viewModel, of, look, reads } = bench();
    const [piece, size] = [session.project.pieces[0]?.id ?? '', session.project.sizes[0]?.id ?? ''];
    const key = { ...of(), piece: { id: piece, name: 'sleeve' }, size: { id: size, name: '' } };
    const countedAt = '2026-11-27T10:00:00.000Z';
    disks.listed = [
      { kind: 'piece', of: key, reading: 61, last: 140, isFinished: false, carriageAt: 'left', countedAt },
    ];
    let answer = (): void => undefined;
    const held = new Promise<void>((resolve) => (answer = resolve));
    disks.held.set('knitting.list', held);
    look('another');
    await viewModel.happened({ kind: 'row-done' });
    await reads(1);
    answer();
    await held;
    await new Promise((resolve) => setTimeout(resolve));
    expect(viewModel.countedElsewhere).toBeNull();
  });

  it('leads nowhere where the piece that was counted last is off the needles', async () => {
    const { disks, session, viewModel, of, look } = bench();
    const [piece, size] = [session.project.pieces[0]?.id ?? '', session.project.sizes[0]?.id ?? ''];
    const key = { ...of(), piece: { id: piece, name: 'sleeve' }, size: { id: size, name: '' } };
    disks.listed = [
      {
        kind: 'piece',
        of: key,
        reading: 140,
        last: 140,
        isFinished: true,
        carriageAt: 'left',
        countedAt: '2026-11-27T10:00:00.000Z',
      },
    ];
    look('another');
    await vi.waitFor(() => expect(disks.asked).toContain('knitting.list'));
    expect(viewModel.countedElsewhere).toBeNull();
  });

  it('asks before a count is put aside, and not where nothing is counted', async () => {
    const { viewModel, look, reads, disks, of } = bench();
    look();
    await reads(0);
    viewModel.askAnew();
    expect(viewModel.isAnewAsked).toBe(false);
    await viewModel.happened({ kind: 'row-done' });
    await reads(1);
    viewModel.askAnew();
    expect(viewModel.isAnewAsked).toBe(true);
    viewModel.leaveAnew();
    expect([viewModel.isAnewAsked, disks.of(of()).entries.length]).toEqual([false, 1]);
  });

  it('asks for the reading where the journal is damaged, and after it was begun anew for one that cannot be read', async () => {
    const { viewModel, look, reads, disks, of } = bench();
    look();
    for (let row = 0; row < 3; row++) await viewModel.happened({ kind: 'row-done' });
    await reads(3);
    const disk = disks.of(of());
    disk.spoilt = disk.text().split('\n').toSpliced(2, 1).join('\n');
    look('another');
    look();
    await reads(1);
    expect(viewModel.asked).toBe(1);
    disk.spoilt = 'a page of text\n';
    look('another');
    expect(viewModel.asked).toBeNull();
    look();
    await vi.waitFor(() => expect(viewModel.unread?.code).toBe('journal-not-ours'));
    disk.spoilt = null;
    viewModel.beginAnew();
    await vi.waitFor(() => expect([viewModel.unread, viewModel.asked]).toEqual([null, 0]));
  });

  it('goes on as it was begun until the design is changed again, wherever the knitter was meanwhile', async () => {
    const { viewModel, of, reads } = bench();
    const other = (first: number) => ({
      ...DESIGN,
      yarns: DESIGN.yarns.map((yarn) => ({ ...yarn, name: `${first}` })),
    });
    const lookWith = (design: typeof DESIGN, piece?: string) => viewModel.look(of(piece), design, counterOf);
    lookWith(DESIGN);
    await viewModel.happened({ kind: 'row-done' });
    await reads(1);
    lookWith(other(1));
    expect(viewModel.isChangeOpen).toBe(true);
    viewModel.passOver();
    expect(viewModel.isChangeOpen).toBe(false);
    lookWith(DESIGN, 'another');
    // Planned once more it is the same design.
    lookWith(other(1));
    await reads(1);
    expect(viewModel.isChangeOpen).toBe(false);
    lookWith(other(2));
    expect(viewModel.isChangeOpen).toBe(true);
  });

  it('begins anew where that is wished', async () => {
    const { viewModel, look, reads, disks, of } = bench();
    look();
    for (let row = 0; row < 3; row++) await viewModel.happened({ kind: 'row-done' });
    await reads(3);
    viewModel.beginAnew();
    await reads(0);
    expect(disks.of(of()).entries).toEqual([]);
  });

  it('takes over what another window counts when it looks around', async () => {
    const { viewModel, look, reads, disks, of } = bench();
    look();
    await viewModel.happened({ kind: 'row-done' });
    disks.of(of()).write([{ id: 'elsewhere', event: { kind: 'row-done', reading: 1 } }]);
    viewModel.lookAround();
    await reads(2);
    expect(viewModel.counted?.isFollowing).toBe(true);
  });

  it('asks for another reading, and proposes the one that is', async () => {
    const { viewModel, look, reads } = bench();
    look();
    expect(viewModel.asked).toBeNull();
    await viewModel.happened({ kind: 'row-done' });
    await reads(1);
    await viewModel.commands['reading-other'].run();
    expect(viewModel.asked).toBe(1);
    viewModel.ask(0);
    expect(viewModel.asked).toBe(0);
    viewModel.leaveAsked();
    expect(viewModel.asked).toBeNull();
  });

  it('keeps what helps at the machine, and says where that could not be kept', async () => {
    const { viewModel, disks, problems } = bench();
    const { 'rows-spoken': spoken } = viewModel.commands;
    expect([viewModel.aids, spoken.isOn?.()]).toEqual([START_AIDS, false]);
    await spoken.run();
    expect([viewModel.aids, spoken.isOn?.()]).toEqual([{ ...START_AIDS, speaks: 'long' }, true]);
    await vi.waitFor(() => expect(disks.asked).toEqual(['settings.keep']));
    expect(problems).toEqual([]);
    disks.fails = true;
    await spoken.run();
    expect(viewModel.aids).toEqual(START_AIDS);
    await vi.waitFor(() => expect(problems).toEqual(['host-unreachable']));
  });
});
