/**
 * The length of yarn in a stitch of a piece, and how surely it is known: worked
 * out from the gauge, or measured on a swatch.
 *
 * What is measured at the gauge of the piece tells the constant ks of the
 * knitter's own fabric, with which the stitches of every other gauge of it are
 * worked out (Munden's l = √(ks / S)).
 */
import type { Gauge, Piece } from '../piece/index.ts';
import { loopLengthMm, loopLengthOfKsMm, MUNDEN, stitchesPerCm2 } from './munden.ts';
import { mmOf } from './tex.ts';

/** Where lengths of stitches come from; `unweighed`: from the gauge, since a weighed swatch tells no length without the count of its yarn. */
export type LoopsFrom = Piece['loop']['from'] | 'unweighed';

export interface Loops {
  readonly from: LoopsFrom;
  /** Yarn in one stitch at a gauge of the piece, in mm. */
  readonly mmOf: (gauge: Gauge) => number;
  /** By this share it may be less or more, e.g. 0.1. */
  readonly share: number;
}

/**
 * What a length worked out from the gauge may be off: as much as the states of
 * relaxation differ, since the fabric may be in another than is said.
 */
export const GAUGE_SHARE = Math.sqrt(MUNDEN['fully-relaxed'].ks / MUNDEN['dry-relaxed'].ks) - 1;

/** From a swatch to the piece (own allowance, no source). */
const SWATCH_SHARE = 0.02;

/** A ruler along a yarn that wants to curl, and a kitchen scale of whole grams (own allowances, no source). */
const READ_MM = 5;
const READ_GRAMS = 0.5;

/** Nothing is known less surely than to the half. */
const MOST_SHARE = 0.5;

/** `tex`: of the main yarn, or null where its count is not known. */
export function loopsOf({ gauge, loop }: Pick<Piece, 'gauge' | 'loop'>, tex: number | null): Loops {
  switch (loop.from) {
    case 'gauge':
      return byKs('gauge', MUNDEN[loop.state].ks, GAUGE_SHARE);
    case 'machine':
      // At rest the same stitches lie on width × length as much: there are so many more in a cm².
      return byKs('machine', MUNDEN['dry-relaxed'].ks * loop.width * loop.length, GAUGE_SHARE);
    case 'unravelled':
      return measured('unravelled', gauge, loop.mm / loop.stitches, READ_MM / loop.mm);
    case 'weighed': {
      const mm = mmOf(loop.grams, tex);
      if (mm === null) return byKs('unweighed', MUNDEN['dry-relaxed'].ks, GAUGE_SHARE);
      return measured('weighed', gauge, mm / (loop.stitches * loop.rows), READ_GRAMS / loop.grams);
    }
  }
}

function byKs(from: LoopsFrom, ks: number, share: number): Loops {
  return { from, mmOf: (gauge) => loopLengthOfKsMm(gauge, ks), share };
}

function measured(from: LoopsFrom, gauge: Gauge, mm: number, readShare: number): Loops {
  const cm = mm / 10;
  return byKs(from, stitchesPerCm2(gauge) * cm * cm, Math.min(MOST_SHARE, SWATCH_SHARE + readShare));
}

/** By how much a measured stitch differs from one worked out from its gauge, dry relaxed: 0.1 where it takes a tenth more. */
export function offTheGauge({ gauge }: Pick<Piece, 'gauge'>, loops: Loops): number {
  return loops.mmOf(gauge) / loopLengthMm(gauge) - 1;
}
