/** Days and moments. The moment is handed in: nothing here asks a clock. */
import { dayFrom, type Day } from './model.ts';

/** The day that it is at that moment where the program runs: what a calendar on the wall says. */
export function localDay(moment: Date): Day {
  const [year, month, day] = [moment.getFullYear(), moment.getMonth() + 1, moment.getDate()];
  return dayFrom([padded(year, 4), padded(month, 2), padded(day, 2)].join('-'));
}

/** The day that it is at that moment in UTC, wherever the program runs. */
export function utcDay(moment: Date): Day {
  return dayFrom(moment.toISOString().slice(0, 10));
}

/** Noon of the day in UTC: the moment that has this date in most places, for formats that want one. */
export function noonOf(day: Day): Date {
  return new Date(`${day}T12:00:00Z`);
}

function padded(number: number, digits: number): string {
  return String(number).padStart(digits, '0');
}
