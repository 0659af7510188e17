/** How days are said. */
import { noonOf, type Day } from '../../day/index.ts';

const LONG = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });

export const dates = {
  /** `26 November 2026`. */
  day: (day: Day): string => LONG.format(noonOf(day)),
};
