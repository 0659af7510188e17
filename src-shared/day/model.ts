/** A day of the calendar, as requests and calls give it. */
import { problemError } from '../problem/index.ts';
import { z } from '../schema/index.ts';

/** As ISO 8601 writes it, `2026-11-26`, and one that there is. */
export const daySchema = z.iso.date().brand<'Day'>();
export type Day = z.infer<typeof daySchema>;

/** The day that a text is, blanks around it apart. Throws `not-a-date`. */
export function dayFrom(text: string): Day {
  const read = daySchema.safeParse(text.trim());
  if (!read.success) throw problemError('not-a-date', { text });
  return read.data;
}
