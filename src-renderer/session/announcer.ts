/** Announcing what changes quickly. */
import type { Session } from './session.ts';

/** Announces; `heard`: to assistive technology alone, of what is seen elsewhere already. */
export type Announcer = (text: string, how?: 'seen' | 'heard') => void;

/**
 * Announces the latest of what follows quickly, throttled. What a command
 * announces meanwhile is worth more: nothing older is said over it. `heard`: it
 * is seen elsewhere already, and assistive technology alone is told.
 */
export function announcerFor(session: Pick<Session, 'announcement' | 'announce' | 'announceQuietly'>): Announcer {
  let before = session.announcement;
  let isOnlyHeard = false;
  const announceLater = announceThrottled((text) => {
    if (session.announcement !== before) return;
    if (isOnlyHeard) session.announceQuietly(text);
    else session.announce(text);
    before = session.announcement;
  });
  return (text, how = 'seen') => {
    before = session.announcement;
    isOnlyHeard = how === 'heard';
    announceLater(text);
  };
}

/** Throttles announcements to one in 250 ms; the latest wins. */
const APART_MS = 250;

/** A function like `announce` that lets at most one text through in that time, the latest one last. */
export function announceThrottled(announce: (text: string) => void): (text: string) => void {
  let waiting: string | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  const rest = (): void => {
    timer = null;
    if (waiting === null) return;
    announce(waiting);
    waiting = null;
    timer = setTimeout(rest, APART_MS);
  };
  return (text) => {
    waiting = text;
    if (timer === null) rest();
  };
}
