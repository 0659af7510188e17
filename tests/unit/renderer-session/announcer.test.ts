/** What is said of what moves, beside what commands say. */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { changeOf, sampleProject, setProject } from '@shared/project/index.ts';
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

it('shows nothing of what was done before something else was, but of what is being done', () => {
  const session = new Session(sampleProject(), true);
  const rename = (name: string): void => session.change(changeOf('rename-project', setProject({ name })));
  session.announce('Untitled is new.');
  rename('Jersey');
  expect(session.isAnnouncementPast).toBe(false);
  vi.runAllTimers();
  rename('Guernsey');
  expect(session.isAnnouncementPast).toBe(true);
  session.announce('Renamed.');
  expect(session.isAnnouncementPast).toBe(false);
  vi.runAllTimers();
  session.look({ bench: session.view.bench });
  expect(session.isAnnouncementPast).toBe(false);
  session.look({ bench: session.view.bench === 'piece' ? 'motif' : 'piece' });
  expect(session.isAnnouncementPast).toBe(true);
});
