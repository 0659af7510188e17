/** Days: what texts are taken for one, which day a moment is, and how it is said. */
import { afterEach, describe, expect, it } from 'vitest';
import { dayFrom, localDay, noonOf, utcDay } from '@shared/day/index.ts';
import { problemOf } from '@shared/problem/index.ts';
import { words } from '@shared/words/index.ts';

describe('a date that is typed', () => {
  // Leap years: ISO 8601 has the Gregorian calendar, where 2000 has a 29 February and 1900 has none.
  it.each(['2026-11-26', '2024-02-29', '2000-02-29', ' 2026-01-02 ', '0001-01-01', '9999-12-31'])(
    '%s is one',
    (text) => {
      expect(dayFrom(text)).toBe(text.trim());
    },
  );

  it.each([
    '',
    'today',
    '26.11.2026',
    '2026-11',
    '2026-1-2',
    '2026-02-29',
    '1900-02-29',
    '2026-04-31',
    '2026-13-01',
    '2026-00-10',
    '2026-11-26T12:00:00Z',
    '12026-01-01',
  ])('%j is none', (text) => {
    try {
      dayFrom(text);
      throw new Error('It was taken');
    } catch (thrown) {
      expect(problemOf(thrown)).toMatchObject({ code: 'not-a-date', facts: { text } });
    }
  });
});

describe('the day of a moment', () => {
  const zone = process.env['TZ'];
  afterEach(() => {
    if (zone === undefined) delete process.env['TZ'];
    else process.env['TZ'] = zone;
  });

  it.each([
    ['Pacific/Kiritimati', '2026-11-27'],
    ['UTC', '2026-11-26'],
    ['Pacific/Pago_Pago', '2026-11-26'],
  ])('in %s is what the calendar says there, and in UTC the same everywhere', (place, day) => {
    process.env['TZ'] = place;
    const moment = new Date('2026-11-26T13:30:00Z');
    expect(localDay(moment)).toBe(day);
    expect(utcDay(moment)).toBe('2026-11-26');
  });

  it('and back: noon in UTC, which has this date from UTC-12 to UTC+11', () => {
    expect(noonOf(dayFrom('2026-11-26')).toISOString()).toBe('2026-11-26T12:00:00.000Z');
  });
});

it('a day is said as people write it', () => {
  expect(words.dates.day(dayFrom('2026-11-26'))).toBe('26 November 2026');
  expect(words.dates.day(dayFrom('2024-02-09'))).toBe('9 February 2024');
  // Every month, and days of one and two figures, as the platform's own formatter writes them (Unicode CLDR).
  const asPublished = new Intl.DateTimeFormat('en-GB', {
    day: 'numeric',
    month: 'long',
    year: 'numeric',
    timeZone: 'UTC',
  });
  for (let month = 0; month < 12; month++) {
    for (const date of [1, 10, 28]) {
      const moment = new Date(Date.UTC(2027, month, date, 12));
      expect(words.dates.day(utcDay(moment))).toBe(asPublished.format(moment));
    }
  }
});
