/** What is said of the cell cursor as it moves. */
import type { Session } from '../../shell/session.ts';
import { announceThrottled } from '../../ui/announce-throttled.ts';

/** Says where the cursor is once it rests; what a command said meanwhile is worth more. */
export function cursorVoice(session: Session): (said: string) => void {
  let before = session.announcement;
  const announceLater = announceThrottled((said) => {
    if (session.announcement === before) session.announce(said);
  });
  return (said) => {
    before = session.announcement;
    announceLater(said);
  };
}
