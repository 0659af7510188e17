/** Announcing what changes quickly. */
import type { Session } from './session.ts';

/**
 * Announces the latest of what follows quickly, throttled. What a command
 * announces meanwhile is worth more: nothing older is said over it.
 */
export function announcerFor(session: Pick<Session, 'announcement' | 'announce'>): (text: string) => void {
  let before = session.announcement;
  const announceLater = announceThrottled((text) => {
    if (session.announcement !== before) return;
    session.announce(text);
    before = session.announcement;
  });
  return (text) => {
    before = session.announcement;
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
