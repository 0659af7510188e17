/** Says what changes quickly no oftener than can be heard. */
const APART_MS = 250;

/** A function like `say` that lets at most one text through each time, the latest one last. */
export function sayCalmly(say: (text: string) => void): (text: string) => void {
  let waiting: string | null = null;
  let timer: ReturnType<typeof setTimeout> | null = null;
  const rest = (): void => {
    timer = null;
    if (waiting === null) return;
    say(waiting);
    waiting = null;
    timer = setTimeout(rest, APART_MS);
  };
  return (text) => {
    waiting = text;
    if (timer === null) rest();
  };
}
