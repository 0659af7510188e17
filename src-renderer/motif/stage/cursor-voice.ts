/** What is said of the cell cursor as it moves. */
import type { Session } from '../../shell/session.ts';
import { sayCalmly } from '../../ui/say-calmly.ts';

/** Says where the cursor is once it rests; what a command said meanwhile is worth more. */
export function cursorVoice(session: Session): (said: string) => void {
  let before = '';
  const sayLater = sayCalmly((said) => {
    if (session.announced === before) session.announce(said);
  });
  return (said) => {
    before = session.announced;
    sayLater(said);
  };
}
