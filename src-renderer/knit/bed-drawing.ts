/** The bed of a row as shapes, needle by needle, in units of one needle's width. */
import { label, type Slot } from '@shared/bed/index.ts';
import type { BedAt } from '@shared/knitting/index.ts';

/** How far above the bed needles reach, in pixels: forward ones twice as far as working ones, and with a head. */
export const FORWARD = 46;
export const WORKING = 20;
const OUT_OF_WORK = 5;
const HEAD = 4;

export interface BedShapes {
  /** Paths in pixels, the bed at y = 0 and needles above it. */
  readonly working: string;
  readonly out: string;
  readonly forward: string;
  readonly heads: string;
  readonly loops: string;
  readonly labels: readonly { readonly x: number; readonly text: string; readonly isWrap: boolean }[];
  readonly groups: readonly { readonly first: number; readonly last: number; readonly index: number }[];
  readonly forwardCount: number;
  readonly inWorkCount: number;
  readonly width: number;
}

/** `pitch`: pixels from needle to needle; `letter`: how large labels are, in pixels. */
export function bedShapes({ needles, groups }: BedAt, pitch: number, letter = 14): BedShapes {
  const [start] = needles;
  const x = (needle: number): number => (needle - (start?.needle ?? 0) + 0.5) * pitch;
  let [working, out, forward, heads, loops] = ['', '', '', '', ''];
  let [forwardCount, inWorkCount] = [0, 0];
  const labels: BedShapes['labels'][number][] = [];
  for (const { needle, state, isWrapped } of needles) {
    const at = round(x(needle));
    // Those that are forward cover it: the line of a stretch of rows stays the same.
    if (state !== 'out-of-work') {
      inWorkCount++;
      working += `M${at} 0V${-WORKING}`;
    } else out += `M${at} 0V${-OUT_OF_WORK}`;
    if (state === 'forward') {
      forwardCount++;
      forward += `M${at} 0V${-FORWARD}`;
      heads += `M${round(at - HEAD)} ${-FORWARD - HEAD}a${HEAD} ${HEAD} 0 1 0 ${2 * HEAD} 0a${HEAD} ${HEAD} 0 1 0 ${-2 * HEAD} 0`;
    }
    if (isWrapped) {
      const reach = Math.max(5, Math.min(9, pitch * 0.7));
      loops += `M${round(at - reach)} ${-WORKING / 2}a${reach} ${reach} 0 1 1 ${round(reach * 1.4)} ${round(reach * 0.9)}`;
    }
    if (isWrapped || isTenth(needle)) labels.push({ x: at, text: label(needle), isWrap: isWrapped });
  }
  return {
    ...{ working, out, forward, heads, loops, forwardCount, inWorkCount },
    labels: readable(labels, letter),
    groups: groups.map((group, index) => ({
      first: x(group.needles.first) - pitch / 2,
      last: x(group.needles.last) + pitch / 2,
      index,
    })),
    width: needles.length * pitch,
  };
}

/** Needles are numbered from the middle outwards: L10 is at −10, R10 at 9. */
function isTenth(needle: Slot): boolean {
  return (needle < 0 ? -needle : needle + 1) % 10 === 0;
}

/** Labels of needles to wrap come first, and none over another. */
function readable(labels: readonly BedShapes['labels'][number][], letter: number): BedShapes['labels'][number][] {
  /** `R83 wrap` is longer than `R90`; a letter is 0.56 of its height wide, and some room is left between. */
  const half = ({ text, isWrap }: (typeof labels)[number]): number =>
    letter * (0.28 * (text.length + (isWrap ? 5 : 0)) + 0.2);
  const kept: BedShapes['labels'][number][] = [];
  for (const one of [...labels].sort((a, b) => Number(b.isWrap) - Number(a.isWrap))) {
    if (kept.every((other) => Math.abs(other.x - one.x) >= half(other) + half(one))) kept.push(one);
  }
  return kept.sort((a, b) => a.x - b.x);
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
