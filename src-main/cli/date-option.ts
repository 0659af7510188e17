/**
 * The date on what a call writes.
 *
 * Today's, unless `--date` gives another, or the surroundings do:
 * SOURCE_DATE_EPOCH counts the seconds since 1970 and is read as a day in UTC
 * (the specification of that name at reproducible-builds.org), so that files
 * come out the same byte for byte whenever and wherever they are made.
 */
import { dayFrom, localDay, utcDay, type Day } from '@shared/day/index.ts';
import { problemError } from '@shared/problem/index.ts';
import type { Args } from './args.ts';
import { value } from './values.ts';

const EPOCH = 'SOURCE_DATE_EPOCH';
/** The last second of the year 9999, the last that a date has room for. */
const LAST_SECOND = 253_402_300_799;

/** Throws `not-a-date` and `epoch-unusable`. */
export function dateOf(args: Args): Day {
  return value(args, 'date', dayFrom) ?? epochDay(process.env[EPOCH]) ?? localDay(new Date());
}

/** Null where it is not set, or set to nothing. */
function epochDay(text: string | undefined): Day | null {
  if (text === undefined || text === '') return null;
  const seconds = /^\d{1,12}$/.test(text) ? Number(text) : NaN;
  if (!(seconds <= LAST_SECOND)) throw problemError('epoch-unusable', { text, most: LAST_SECOND }, EPOCH);
  return utcDay(new Date(seconds * 1000));
}
