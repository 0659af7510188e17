/** Which yarn is in which feeder, on bench and sheet. */
import type { FeedingLine, FeedingRun } from '../../plan/feeding.ts';
import type { Yarn } from '../../project/index.ts';
import { numbers as n } from './numbers.ts';

/** More stretches of rows than this are not read; the row list has all of them. */
const MOST_SPANS = 12;

const nameOf = (yarns: readonly Yarn[], yarn: number | null): string =>
  yarn === null ? '' : (yarns[yarn]?.name ?? '');

export const feeding = {
  title: 'Which yarn is where',
  columns: { rows: 'Rows', first: 'Feeder 1', second: 'Feeder 2', byHand: 'By hand' },
  about: 'Feeder 1 knits the needles that stand back, feeder 2 those that stand forward.',
  /** Where a feeder is empty. */
  none: '–',
  yarn: (yarns: readonly Yarn[], yarn: number | null): string => nameOf(yarns, yarn) || feeding.none,
  byHand: (yarns: readonly Yarn[], laid: readonly number[]): string =>
    laid.length === 0 ? feeding.none : n.list(laid.map((yarn) => nameOf(yarns, yarn))),
  rows({ rows }: Pick<FeedingLine, 'rows'>): string {
    const spans = rows.slice(0, MOST_SPANS).map(([first, last]) => n.span(first, last));
    const more = rows.length - spans.length;
    return more > 0 ? `${spans.join(', ')} and ${n.count(more, 'more stretch', 'more stretches')}` : spans.join(', ');
  },
  /** A stretch of the strip: `Rows 25–42: slate in feeder 1, chalk in feeder 2`. */
  run({ first, last, feeders, byHand }: FeedingRun, yarns: readonly Yarn[]): string {
    const parts = [
      ...([1, 2] as const).flatMap((feeder) =>
        feeders[feeder] === null ? [] : [`${nameOf(yarns, feeders[feeder])} in feeder ${feeder}`],
      ),
      ...(byHand.length === 0 ? [] : [`${feeding.byHand(yarns, byHand)} laid by hand`]),
    ];
    const rows = n.rowSpan(first, last);
    return `${rows.charAt(0).toUpperCase()}${rows.slice(1)}: ${parts.join(', ')}`;
  },
  /** As long as the running order is not there. */
  working: 'Looking ahead…',
  /** A piece that cannot be knitted as it stands. */
  blocked: 'The piece cannot be knitted as it is, so nothing is fed yet.',
};
