/** How days are said. */
import type { Day } from '../../day/index.ts';

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

export const dates = {
  /** `26 November 2026`. Said by hand: to make a formatter takes the platform 40 ms. */
  day: (day: Day): string => {
    const [year = 0, month = 0, date = 0] = day.split('-').map(Number);
    return `${date} ${MONTHS[month - 1] ?? ''} ${year}`;
  },
};
