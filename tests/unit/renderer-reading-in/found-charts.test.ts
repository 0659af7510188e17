/** Which found chart corners mean, however they were put right or turned. */
import { describe, expect, it } from 'vitest';
import { problemError, problemOf } from '@shared/problem/index.ts';
import { turnedBy, type Corners, type FoundChart } from '@shared/reading/index.ts';
import { foundAt, questionOf } from '../../../src-renderer/reading-in/chart/found-charts.ts';

const box = (left: number, top: number, width: number, height: number): Corners => [
  { x: left, y: top },
  { x: left + width, y: top },
  { x: left + width, y: top + height },
  { x: left, y: top + height },
];
/** Cells of 10 pixels. */
const CHARTS: readonly FoundChart[] = [
  { corners: box(20, 20, 200, 100), columns: 20, rows: 10, sure: true, why: [] },
  { corners: box(300, 20, 80, 120), columns: 8, rows: 12, sure: false, why: ['unclear'] },
];
const moved = (corners: Corners, by: number): Corners =>
  corners.map(({ x, y }, index) => (index === 2 ? { x: x + by, y } : { x, y })) as unknown as Corners;

describe('corners of a found chart', () => {
  it('mean it, with its counts', () => {
    expect(foundAt(CHARTS, box(20, 20, 200, 100))).toEqual({ chart: 0, columns: 20, rows: 10 });
    expect(foundAt(CHARTS, box(300, 20, 80, 120))).toEqual({ chart: 1, columns: 8, rows: 12 });
  });

  it('mean it still when one is put right by less than half a cell, and no more after that', () => {
    const [{ corners }] = CHARTS as [FoundChart];
    expect(foundAt(CHARTS, moved(corners, 4.9))).toEqual({ chart: 0, columns: 20, rows: 10 });
    expect(foundAt(CHARTS, moved(corners, 5.1))).toBeNull();
  });

  it('mean it turned, its counts changing places with each quarter', () => {
    const [{ corners }] = CHARTS as [FoundChart];
    const once = turnedBy(corners, 1);
    expect(once[0]).toEqual({ x: 20, y: 120 });
    expect(foundAt(CHARTS, once)).toEqual({ chart: 0, columns: 10, rows: 20 });
    expect(foundAt(CHARTS, turnedBy(corners, 2))).toEqual({ chart: 0, columns: 20, rows: 10 });
    expect(turnedBy(once, 3)).toEqual(corners);
    expect(turnedBy(corners, 3)).toEqual(turnedBy(corners, -1));
  });

  it('mean none where none was found', () => {
    expect(foundAt([], box(20, 20, 200, 100))).toBeNull();
  });
});

describe('what is asked of the charts that were found', () => {
  const none = { charts: [], chosen: null, isFinding: false, isConfirmed: false, notFound: null };
  const [sure, unsure] = CHARTS as [FoundChart, FoundChart];

  it('is nothing while they are looked for, and why there is none', () => {
    expect(questionOf({ ...none, isFinding: true })).toEqual({ kind: 'wait' });
    const problem = problemOf(problemError('chart-not-found', { why: 'too-small', width: 40, height: 40 }));
    expect(questionOf({ ...none, notFound: problem })).toEqual({ kind: 'none', problem });
  });

  it('is whether the corners are right, until that is said', () => {
    const one = { ...none, charts: [unsure], chosen: 0 };
    expect(questionOf(one)).toEqual({ kind: 'chart', chart: unsure, isOpen: true });
    expect(questionOf({ ...one, isConfirmed: true })).toEqual({ kind: 'chart', chart: unsure, isOpen: false });
  });

  it('is which one is meant, where there are two', () => {
    const two = { ...none, charts: [sure, unsure] };
    expect(questionOf(two)).toEqual({ kind: 'which' });
    expect(questionOf({ ...two, chosen: 0, isConfirmed: true })).toEqual({ kind: 'chart', chart: sure, isOpen: false });
  });

  it('is nothing where a person has set the corners', () => {
    expect(questionOf({ ...none, charts: [sure], isConfirmed: true })).toEqual({ kind: 'nothing' });
  });
});
