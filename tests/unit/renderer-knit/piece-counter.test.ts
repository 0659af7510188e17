/** A piece that is counted: written first, shown then, and not lost where nothing can be written. */
import { describe, expect, it } from 'vitest';
import type { PieceKey } from '@shared/journal/index.ts';
import type { KnittingOrder } from '@shared/knitting/index.ts';
import type { Problem } from '@shared/problem/index.ts';
import { projectAt, sampleProject } from '@shared/project/index.ts';
import { AWAY_MS, PieceCounter, type Counted } from '../../../src-renderer/knit/piece-counter.ts';
import { settled } from '../../written-projects.ts';
import { Disk } from './disk.ts';
import { orderOf } from './order-of.ts';

const SAMPLE = projectAt(sampleProject());
const OF: PieceKey = {
  project: { name: 'Sample', path: null },
  piece: { id: 'p', name: 'sleeve' },
  size: { id: 's', name: '' },
  copy: 1,
};

const DESIGN = orderOf(SAMPLE);

function counterOn(disk: Disk, design: KnittingOrder | null = DESIGN, now = (): number => 0) {
  const shown: (Counted | null)[] = [];
  const problems: Problem[] = [];
  const unread: (Problem['code'] | null)[] = [];
  const listener = {
    unread: (problem: Problem | null) => unread.push(problem?.code ?? null),
    counted: (counted: Counted | null) => shown.push(counted),
    problem: (problem: Problem) => problems.push(problem),
  };
  const counter = new PieceCounter(disk.host, OF, design, listener, now);
  return { counter, shown, problems, unread, last: () => shown.at(-1) as Counted };
}

describe('a piece that is counted', () => {
  it('is begun with its first row, and each row is on the disk before it is shown', async () => {
    const disk = new Disk();
    const { counter, last, shown } = counterOn(disk);
    await counter.load();
    expect([last().place.reading, last().isKept, disk.begun]).toEqual([0, true, null]);
    await counter.happened({ kind: 'row-done' });
    expect(disk.entries.map(({ event }) => event.kind)).toEqual(['row-done']);
    await counter.happened({ kind: 'row-done' });
    expect(shown.map((each) => each?.place.reading)).toEqual([0, 1, 2]);
    expect(shown.every((each) => each?.isKept)).toBe(true);
  });

  it('goes on where its journal ends, once it is said where the carriage stands', async () => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    for (let row = 0; row < 3; row++) await first.counter.happened({ kind: 'row-done' });
    const second = counterOn(disk);
    await second.counter.load();
    expect(second.last().place).toMatchObject({ phase: 'returning', reading: 3 });
    await second.counter.happened({ kind: 'row-done' });
    expect(second.problems.map(({ code }) => code)).toEqual(['carriage-not-seen']);
    // It starts at the right, so after three rows it stands at the left.
    await second.counter.happened({ kind: 'carriage-seen', at: 'left' });
    await second.counter.happened({ kind: 'row-done' });
    expect(second.last().place).toMatchObject({ phase: 'knitting', reading: 4 });
  });

  it('goes on while nothing can be written, says so, and writes all of it later', async () => {
    const disk = new Disk();
    const { counter, last } = counterOn(disk);
    await counter.load();
    await counter.happened({ kind: 'row-done' });
    disk.fails = true;
    await counter.happened({ kind: 'row-done' });
    await counter.happened({ kind: 'row-done' });
    expect([last().place.reading, last().isKept, disk.entries.length]).toEqual([3, false, 1]);
    disk.fails = false;
    await counter.catchUp();
    expect([last().place.reading, last().isKept, disk.entries.length]).toEqual([3, true, 3]);
  });

  it('takes over what another window has counted, and lets go of what was thought to happen elsewhere', async () => {
    const disk = new Disk();
    const one = counterOn(disk);
    await one.counter.load();
    await one.counter.happened({ kind: 'row-done' });
    disk.write([{ id: 'another-1', event: { kind: 'row-done', reading: 1 } }]);
    await one.counter.catchUp();
    expect(one.last().place.reading).toBe(2);
    disk.write([{ id: 'another-2', event: { kind: 'row-done', reading: 2 } }]);
    await one.counter.happened({ kind: 'row-done' });
    // Both pressed for the same row: it is counted once.
    expect(one.last().place.reading).toBe(3);
    expect(one.problems.map(({ code }) => code)).toEqual(['counted-elsewhere']);
    expect(disk.entries).toHaveLength(3);
  });

  it('goes on as it was begun when the design changes, and with the changed one when that is taken', async () => {
    const disk = new Disk();
    const { counter, last } = counterOn(disk);
    await counter.load();
    const [pattern] = SAMPLE.patterns;
    const changed = orderOf(settled(SAMPLE, { patterns: [{ ...pattern, endNeedles: true } as never] }));
    // Before the first row there is nothing that could differ.
    counter.redesign(changed);
    expect([last().knitting, last().changed !== null]).toEqual([changed, false]);
    counter.redesign(DESIGN);
    await counter.happened({ kind: 'row-done' });
    counter.redesign(changed);
    expect([last().knitting === DESIGN, last().changed !== null]).toEqual([true, true]);
    counter.redesign(orderOf(SAMPLE));
    expect(last().changed).toBeNull();
  });

  it('refuses what cannot be, and stays where it is', async () => {
    const { counter, last, problems } = counterOn(new Disk());
    await counter.load();
    await counter.happened({ kind: 'back' });
    await counter.happened({ kind: 'go-to', to: 100_000 });
    expect(problems.map(({ code }) => code)).toEqual(['no-row-knitted', 'reading-unknown']);
    expect(last().place.reading).toBe(0);
  });

  it('counts presses that follow each other faster than they are written, each once', async () => {
    const disk = new Disk();
    const { counter, last } = counterOn(disk);
    await counter.load();
    await Promise.all(Array.from({ length: 7 }, () => counter.happened({ kind: 'row-done' })));
    expect([last().place.reading, disk.entries.length]).toEqual([7, 7]);
  });

  it('asks this window alone where the carriage stands: one that counts meanwhile goes on', async () => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    await first.counter.happened({ kind: 'row-done' });
    const second = counterOn(disk);
    await second.counter.load();
    expect(second.last().place.phase).toBe('returning');
    await first.counter.catchUp();
    await first.counter.happened({ kind: 'row-done' });
    expect(first.last().place).toMatchObject({ phase: 'knitting', reading: 2 });
    // What is no word on where it stands leaves the question.
    await second.counter.catchUp();
    await second.counter.happened({ kind: 'back' });
    expect(second.last().place).toMatchObject({ phase: 'returning', reading: 1 });
    await second.counter.happened({ kind: 'carriage-seen', at: 'left' });
    expect(second.last().place.phase).toBe('knitting');
  });

  it('shows no count from nought while the journal cannot be read, and reads it later', async () => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    for (let row = 0; row < 3; row++) await first.counter.happened({ kind: 'row-done' });
    disk.fails = true;
    const { counter, shown, problems, last } = counterOn(disk);
    await counter.load();
    await counter.catchUp();
    await counter.happened({ kind: 'row-done' });
    expect([shown, problems.map(({ code }) => code)]).toEqual([[], ['host-unreachable']]);
    disk.fails = false;
    await counter.catchUp();
    expect(last().place).toMatchObject({ phase: 'returning', reading: 3 });
  });

  it.each([
    ['journal-not-ours', 'a page of text\n'],
    ['journal-damaged', `00000000 ${JSON.stringify({ format: 'walewright-knitting' })}\n`],
  ])('tells %s once, and shows nothing that is not so', async (code, text) => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    await first.counter.happened({ kind: 'row-done' });
    disk.spoilt = text;
    const { counter, shown, problems, unread, last } = counterOn(disk);
    await counter.load();
    await counter.catchUp();
    expect([shown, problems, unread]).toEqual([[], [], [code]]);
    // Begun anew it can be counted, and is unread no more.
    await counter.beginAnew();
    disk.spoilt = null;
    expect([last().place.reading, unread]).toEqual([0, [code, null]]);
    await counter.happened({ kind: 'row-done' });
    expect(disk.entries).toHaveLength(1);
  });

  it.each([
    ['one letter is wrong', (lines: string[]) => lines.with(3, (lines[3] as string).replace('row-done', 'row-donf'))],
    ['lines are gone', (lines: string[]) => lines.toSpliced(3, 1)],
  ])('says from which line on it cannot be read where %s, and asks what the counter reads', async (_, spoil) => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    for (let row = 0; row < 6; row++) await first.counter.happened({ kind: 'row-done' });
    disk.spoilt = spoil(disk.text().split('\n')).join('\n');
    const { counter, last } = counterOn(disk);
    await counter.load();
    expect(last()).toMatchObject({ damage: { line: 4, entries: 2 }, place: { phase: 'returning', reading: 2 } });
    // Where the carriage stands is no word on the row.
    disk.entries = disk.entries.slice(0, 2);
    await counter.happened({ kind: 'carriage-seen', at: 'right' });
    expect(last().damage).not.toBeNull();
    await counter.happened({ kind: 'go-to', to: 6 });
    expect(last()).toMatchObject({ damage: null, isKept: true, place: { phase: 'returning', reading: 6 } });
  });

  it('asks where the carriage stands even at nought where the first entry cannot be read', async () => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    await first.counter.happened({ kind: 'row-done' });
    disk.spoilt = disk.text().replace('row-done', 'row-donf');
    const { counter, last } = counterOn(disk);
    await counter.load();
    expect(last()).toMatchObject({ damage: { line: 2, entries: 0 }, place: { phase: 'returning', reading: 0 } });
  });

  it('finds nothing wrong with a line that broke off', async () => {
    const disk = new Disk();
    const first = counterOn(disk);
    await first.counter.load();
    for (let row = 0; row < 3; row++) await first.counter.happened({ kind: 'row-done' });
    disk.spoilt = disk.text().slice(0, -20);
    const { counter, last } = counterOn(disk);
    await counter.load();
    expect(last()).toMatchObject({ damage: null, place: { reading: 2 } });
  });

  it('goes on as it was begun where the design cannot be knitted any more; without either there is nothing', async () => {
    const disk = new Disk();
    const { counter, last } = counterOn(disk);
    await counter.load();
    await counter.happened({ kind: 'row-done' });
    counter.redesign(null);
    await counter.happened({ kind: 'row-done' });
    expect([last().place.reading, last().changed !== null, last().knitting]).toEqual([2, false, DESIGN]);
    const none = counterOn(new Disk(), null);
    await none.counter.load();
    await none.counter.happened({ kind: 'row-done' });
    expect(none.shown).toEqual([null]);
  });

  it('takes over what another window has begun before this one counts', async () => {
    const disk = new Disk();
    const [one, other] = [counterOn(disk), counterOn(disk)];
    await one.counter.load();
    await other.counter.load();
    await one.counter.happened({ kind: 'row-done' });
    await other.counter.catchUp();
    expect(other.last().place).toMatchObject({ phase: 'knitting', reading: 1 });
  });

  it('is begun anew by the design as it is, and what was counted is put aside', async () => {
    const disk = new Disk();
    const { counter, last } = counterOn(disk);
    await counter.load();
    for (let row = 0; row < 3; row++) await counter.happened({ kind: 'row-done' });
    await counter.beginAnew();
    expect([last().place, disk.entries]).toEqual([{ phase: 'knitting', reading: 0, ticks: [] }, []]);
    await counter.happened({ kind: 'row-done' });
    expect(disk.entries).toHaveLength(1);
  });

  it('follows another window that counts, until this one counts again', async () => {
    const disk = new Disk();
    const [one, other] = [counterOn(disk), counterOn(disk)];
    await one.counter.load();
    await one.counter.happened({ kind: 'row-done' });
    await other.counter.load();
    await other.counter.happened({ kind: 'carriage-seen', at: 'left' });
    await other.counter.happened({ kind: 'row-done' });
    expect(other.last().isFollowing).toBe(false);
    await one.counter.catchUp();
    expect(one.last()).toMatchObject({ isFollowing: true, place: { reading: 2 } });
    await one.counter.happened({ kind: 'row-done' });
    expect(one.last().isFollowing).toBe(false);
    await other.counter.catchUp();
    expect(other.last().isFollowing).toBe(true);
  });

  it('asks where the carriage stands after so long without a row, and not before the first', async () => {
    let time = 1_000_000;
    const { counter, last } = counterOn(new Disk(), DESIGN, () => time);
    await counter.load();
    time += 2 * AWAY_MS;
    await counter.catchUp();
    expect(last().place.phase).toBe('knitting');
    await counter.happened({ kind: 'row-done' });
    time += AWAY_MS - 1;
    await counter.catchUp();
    expect(last().place.phase).toBe('knitting');
    time += 1;
    await counter.catchUp();
    expect(last().place).toMatchObject({ phase: 'returning', reading: 1 });
    await counter.happened({ kind: 'carriage-seen', at: 'left' });
    expect(last().place.phase).toBe('knitting');
  });

  it.each([0, 1, 3, 5])(
    'goes over to a piece that another window has begun anew, %i rows of it knitted since',
    async (rows) => {
      const disk = new Disk();
      const [one, other] = [counterOn(disk), counterOn(disk)];
      await one.counter.load();
      for (let row = 0; row < 3; row++) await one.counter.happened({ kind: 'row-done' });
      await other.counter.load();
      await other.counter.beginAnew();
      for (let row = 0; row < rows; row++) await other.counter.happened({ kind: 'row-done' });
      await one.counter.catchUp();
      expect(one.last()).toMatchObject({ place: { reading: rows }, isKept: true, isFollowing: true });
      await one.counter.happened({ kind: 'row-done' });
      expect(one.last().place.reading).toBe(rows + 1);
      expect(disk.entries).toHaveLength(rows + 1);
    },
  );

  it('counts no row of a piece that was put aside onto the one that was begun anew', async () => {
    const disk = new Disk();
    const [one, other] = [counterOn(disk), counterOn(disk)];
    await one.counter.load();
    for (let row = 0; row < 3; row++) await one.counter.happened({ kind: 'row-done' });
    await other.counter.load();
    await other.counter.beginAnew();
    await one.counter.happened({ kind: 'row-done' });
    expect(one.last()).toMatchObject({ place: { reading: 0 }, isKept: true });
    expect(disk.entries).toEqual([]);
  });

  it('goes with its project to another file, and asks nothing for that', async () => {
    const disk = new Disk();
    const { counter, last } = counterOn(disk);
    await counter.load();
    await counter.happened({ kind: 'row-done' });
    let arrive = (): void => undefined;
    counter.goOnAs({ ...OF, project: { name: 'Sample', path: '/x' } }, new Promise<void>((done) => (arrive = done)));
    const row = counter.happened({ kind: 'row-done' });
    // Nothing is written before the journal has come there.
    await Promise.resolve();
    expect(disk.entries).toHaveLength(1);
    arrive();
    await row;
    expect(last().place).toMatchObject({ phase: 'knitting', reading: 2 });
    expect(disk.asked.at(-1)?.project.path).toBe('/x');
  });
});
