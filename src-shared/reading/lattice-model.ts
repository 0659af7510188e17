/**
 * Where every crossing of a lattice lies, laid smoothly through those that
 * were seen: a homography, and what a lens and curled paper add to it.
 */
import { Matrix, solve } from 'ml-matrix';
import type { Point } from './corners.ts';
import type { Anchor } from './lattice.ts';

export interface LatticeModel {
  /** Where the crossing of a column's and a row's line lies; also between and a little beyond. */
  at(column: number, row: number): Point;
  /** How far the crossings seen lie off it, in cells: the middle one of all. */
  readonly misfit: number;
}

/** Rounds in which crossings that do not agree are asked less, and how far off, in cells, makes one count half. */
const ROUNDS = 5;
const MISFIT = 0.15;

/** Powers of the place that a lens and curled paper add, up to the third of both together: so many. */
const POWERS = 10;

/** Crossings pull with their clarity; this pulls each power towards nothing. */
const STIFFNESS = 0.01;

/** Fewer crossings than this say little of how it bends beyond them: it is held stiffer. */
const FREELY = 60;

/** At least nine crossings are needed. */
export function modelOf(anchors: readonly Anchor[]): LatticeModel {
  const frame = frameOf(anchors);
  const pixels = Math.sqrt(
    anchors.reduce((sum, { across, down }) => sum + Math.abs(across.x * down.y - across.y * down.x), 0) /
      anchors.length,
  );
  const trust = anchors.map(({ clarity }) => clarity);
  let at = (column: number, row: number): Point => ({ x: column, y: row });
  let offs: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const flat = homographyThrough(anchors, trust, frame);
    const bent = bendOf(anchors, trust, frame, flat);
    at = (column, row) => {
      const [u, v] = frame(column, row);
      const [p, q] = [flat(u, v), bent(u, v)];
      return { x: p.x + q.x, y: p.y + q.y };
    };
    offs = anchors.map((anchor) => {
      const p = at(anchor.column, anchor.row);
      return Math.hypot(p.x - anchor.at.x, p.y - anchor.at.y) / pixels;
    });
    offs.forEach((off, i) => {
      trust[i] = (anchors[i] as Anchor).clarity / (1 + (off / MISFIT) ** 2);
    });
  }
  const misfit = offs.sort((a, b) => a - b)[offs.length >> 1] as number;
  return { at, misfit };
}

/** Takes columns and rows to about −1 … 1, so that all powers are of one size. */
type Frame = (column: number, row: number) => readonly [number, number];
type Plane = (u: number, v: number) => Point;

function frameOf(anchors: readonly Anchor[]): Frame {
  let [left, right, top, bottom] = [Infinity, -Infinity, Infinity, -Infinity];
  for (const { column, row } of anchors) {
    left = Math.min(left, column);
    right = Math.max(right, column);
    top = Math.min(top, row);
    bottom = Math.max(bottom, row);
  }
  const half = Math.max(right - left, bottom - top, 1) / 2;
  return (column, row) => [(column - (left + right) / 2) / half, (row - (top + bottom) / 2) / half];
}

/** Least squares of x·(1 + g·u + h·v) = a·u + b·v + c, and the same for y: a homography that does not turn over. */
function homographyThrough(anchors: readonly Anchor[], trust: readonly number[], frame: Frame): Plane {
  const mid = { x: 0, y: 0 };
  for (const { at } of anchors) {
    mid.x += at.x / anchors.length;
    mid.y += at.y / anchors.length;
  }
  const scale = anchors.reduce((most, { at }) => Math.max(most, Math.hypot(at.x - mid.x, at.y - mid.y)), 1);
  const left = Matrix.zeros(8, 8);
  const right = Matrix.zeros(8, 1);
  const add = (terms: readonly number[], value: number, weight: number): void => {
    for (let i = 0; i < 8; i++) {
      const term = weight * (terms[i] as number);
      right.set(i, 0, right.get(i, 0) + term * value);
      for (let j = 0; j < 8; j++) left.set(i, j, left.get(i, j) + term * (terms[j] as number));
    }
  };
  anchors.forEach(({ column, row, at }, i) => {
    const [u, v] = frame(column, row);
    const [x, y] = [(at.x - mid.x) / scale, (at.y - mid.y) / scale];
    const weight = trust[i] as number;
    add([u, v, 1, 0, 0, 0, -u * x, -v * x], x, weight);
    add([0, 0, 0, u, v, 1, -u * y, -v * y], y, weight);
  });
  for (let i = 0; i < 8; i++) left.set(i, i, left.get(i, i) + 1e-6);
  const h = solve(left, right).to1DArray() as [number, number, number, number, number, number, number, number];
  return (u, v) => {
    const w = Math.max(0.05, 1 + h[6] * u + h[7] * v);
    return {
      x: mid.x + (scale * (h[0] * u + h[1] * v + h[2])) / w,
      y: mid.y + (scale * (h[3] * u + h[4] * v + h[5])) / w,
    };
  };
}

function bendOf(anchors: readonly Anchor[], trust: readonly number[], frame: Frame, flat: Plane): Plane {
  const left = Matrix.zeros(POWERS, POWERS);
  const right = Matrix.zeros(POWERS, 2);
  const total = trust.reduce((sum, weight) => sum + weight, 0);
  const terms = new Float64Array(POWERS);
  anchors.forEach(({ column, row, at }, i) => {
    const [u, v] = frame(column, row);
    const seen = flat(u, v);
    writePowers(terms, u, v);
    for (let k = 0; k < POWERS; k++) {
      const term = (trust[i] as number) * (terms[k] as number);
      right.set(k, 0, right.get(k, 0) + term * (at.x - seen.x));
      right.set(k, 1, right.get(k, 1) + term * (at.y - seen.y));
      for (let l = 0; l < POWERS; l++) left.set(k, l, left.get(k, l) + term * (terms[l] as number));
    }
  });
  const stiffness = STIFFNESS * Math.max(1, (FREELY / anchors.length) ** 2);
  for (let k = 0; k < POWERS; k++) left.set(k, k, left.get(k, k) + (stiffness * total) / 10);
  const solved = solve(left, right);
  const [across, down] = [0, 1].map((axis) => Float64Array.from(solved.getColumn(axis))) as [
    Float64Array,
    Float64Array,
  ];
  // Asked for millions of places, so that nothing is made anew for each.
  const powers = new Float64Array(POWERS);
  return (u, v) => {
    writePowers(powers, u, v);
    let [x, y] = [0, 0];
    for (let k = 0; k < POWERS; k++) {
      x += (powers[k] as number) * (across[k] as number);
      y += (powers[k] as number) * (down[k] as number);
    }
    return { x, y };
  };
}

function writePowers(to: Float64Array, u: number, v: number): void {
  to[0] = 1;
  to[1] = u;
  to[2] = v;
  to[3] = u * u;
  to[4] = u * v;
  to[5] = v * v;
  to[6] = u * u * u;
  to[7] = u * u * v;
  to[8] = u * v * v;
  to[9] = v * v * v;
}
