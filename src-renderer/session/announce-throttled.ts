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
