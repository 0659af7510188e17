/** What is said of what moves, beside what commands say. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { sampleProject } from '@shared/project/index.ts';
import { announcerFor } from '../../../src-renderer/session/announcer.ts';
import { Session } from '../../../src-renderer/session/session.ts';

beforeEach(() => vi.useFakeTimers());
afterEach(() => vi.useRealTimers());

it('tells of what is seen elsewhere without showing it, and shows what is not', () => {
  const session = new Session(sampleProject(), true);
  const say = announcerFor(session);
  say('Row 1, stitch 2', 'heard');
  expect(session.announcement).toEqual({ text: 'Row 1, stitch 2', isOnlyHeard: true });
  vi.runAllTimers();
  say('Its lower left corner: row 2, stitch 4');
  expect(session.announcement).toEqual({ text: 'Its lower left corner: row 2, stitch 4' });
});

it('keeps quiet if a command spoke meanwhile, also in the same words as the time before', () => {
  const session = new Session(sampleProject(), true);
  const say = announcerFor(session);
  say('Row 1, stitch 2');
  expect(session.announcement.text).toBe('Row 1, stitch 2');
  session.announce('Placed.');
  // It waits a moment now, for one was said just before.
  say('Row 1, stitch 3');
  session.announce('Placed.');
  vi.runAllTimers();
  expect(session.announcement.text).toBe('Placed.');
});
