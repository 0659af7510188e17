/** Announcing what changes quickly. */
import { announceThrottled } from './announce-throttled.ts';
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
