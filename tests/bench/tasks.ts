/** How long the main thread of a page is busy with one thing, as Chromium's trace has it. */
import type { CDPSession, Page } from 'playwright';

interface TraceEvent {
  readonly name: string;
  readonly pid: number;
  readonly tid: number;
  /** Of its beginning, µs. */
  readonly ts: number;
  /** From its beginning to its end, and what the thread worked of that, µs. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args: {
    readonly name?: string;
    readonly chrome_mojo_event_info?: { readonly mojo_interface_tag?: string };
  };
}

/** What a person does not feel as a wait: less than a task that Chromium calls long. */
export const MOST_MS = 50;

export interface Task {
  /** µs, on the clock of the trace. */
  readonly at: number;
  /** From its beginning to its end. */
  readonly ms: number;
  /** What the thread worked meanwhile: less where a busy machine let it wait. */
  readonly workedMs: number;
}

/** The tasks of the page's main thread while `act` goes on, but those in which it answers whoever drives it. */
export async function tasksOf(page: Page, act: () => Promise<unknown>): Promise<Task[]> {
  return (await traced(page, act)).tasks;
}

/** What a page marks the beginning of what counts with. */
const COUNTS = 'from here on it counts';

/** The tasks behind the first call of what `act` is given; what went on before is left out. */
export async function tasksSince(page: Page, act: (fromNow: () => Promise<void>) => Promise<unknown>): Promise<Task[]> {
  const fromNow = (): Promise<void> => page.evaluate((mark) => void performance.mark(mark), COUNTS);
  const { tasks, marked } = await traced(page, () => act(fromNow), [COUNTS]);
  const [first] = marked[COUNTS];
  if (!first) throw new Error('Nothing was to be counted');
  return tasks.filter(({ at }) => at > first.at);
}

/** What is done in a window by a hand: each is marked. */
type ByHand = 'pointermove' | 'pointerdown' | 'pointerup' | 'keydown';

/** What the main thread works from each move of the pointer to the next, ms: the answer to it, down to what is drawn. */
export async function workByMove(page: Page, act: () => Promise<unknown>): Promise<number[]> {
  return (await workBy(['pointermove'], page, act)).work.pointermove;
}

/** The same, and apart from it from each press and each letting go of the pointer to what the hand does next. */
export async function workByPen(page: Page, act: () => Promise<unknown>): Promise<{ moves: number[]; ends: number[] }> {
  const { work } = await workBy(['pointermove', 'pointerdown', 'pointerup'], page, act);
  return { moves: work.pointermove, ends: [...work.pointerdown, ...work.pointerup] };
}

/** The same from each key to the next; with all tasks meanwhile. */
export async function workByKey(page: Page, act: () => Promise<unknown>): Promise<{ work: number[]; tasks: Task[] }> {
  const { work, tasks } = await workBy(['keydown'], page, act);
  return { work: work.keydown, tasks };
}

/** From each of these to the next of any of them. */
async function workBy<Deed extends ByHand>(
  deeds: readonly Deed[],
  page: Page,
  act: () => Promise<unknown>,
): Promise<{ work: { readonly [Name in Deed]: number[] }; tasks: Task[] }> {
  await page.evaluate((types) => {
    const marked = window as { marks?: Set<string> };
    marked.marks ??= new Set();
    for (const type of types) {
      if (marked.marks.has(type)) continue;
      marked.marks.add(type);
      window.addEventListener(type, () => performance.mark(type), true);
    }
  }, deeds);
  const { tasks, marked } = await traced(page, act, deeds);
  const begun = deeds
    .flatMap((deed) => [...new Set(marked[deed].map(({ task }) => task))].map((at) => ({ deed, at, ms: 0 })))
    .sort((a, b) => a.at - b.at);
  for (const { at, workedMs } of tasks) {
    const last = begun.findLast((one) => one.at <= at);
    if (last) last.ms += workedMs;
  }
  const of = (deed: Deed): number[] => begun.filter((one) => one.deed === deed).map(({ ms }) => ms);
  return { work: Object.fromEntries(deeds.map((deed) => [deed, of(deed)])) as { [Name in Deed]: number[] }, tasks };
}

/** What a page marks with these two is timed from one to the other. */
export const MARKS = { from: 'is asked', to: 'is painted' } as const;

/** From each mark `from` to the mark `to` behind it: what passed, and what the main thread worked, whole tasks each. */
export async function betweenMarks(page: Page, act: () => Promise<unknown>): Promise<readonly Omit<Task, 'at'>[]> {
  const { tasks, marked } = await traced(page, act, [MARKS.from, MARKS.to]);
  return marked[MARKS.from].flatMap((from) => {
    const to = marked[MARKS.to].find(({ at }) => at >= from.at);
    if (!to) return [];
    const between = tasks.filter(({ at }) => from.task <= at && at <= to.task);
    return [{ ms: (to.at - from.at) / 1000, workedMs: between.reduce((sum, { workedMs }) => sum + workedMs, 0) }];
  });
}

/** When something was marked, and when the task had begun in which it was, µs. */
interface Marked {
  readonly at: number;
  readonly task: number;
}

interface Traced<Mark extends string> {
  readonly tasks: Task[];
  /** In their order. */
  readonly marked: { readonly [Name in Mark]: Marked[] };
}

async function traced<Mark extends string = never>(
  page: Page,
  act: () => Promise<unknown>,
  marks: readonly Mark[] = [],
): Promise<Traced<Mark>> {
  const browser = page.context().browser();
  if (!browser) throw new Error('The page has a browser of its own');
  const session = await browser.newBrowserCDPSession();
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    // Without the timeline of the developer tools: for each layout it counts all that there is to be laid out, within the
    // task that is timed.
    traceConfig: { includedCategories: ['disabled-by-default-devtools.timeline', 'toplevel', 'blink.user_timing'] },
    transferMode: 'ReportEvents',
  });
  await act();
  await ended(session);
  await session.detach();
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const mains = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain').map(threadOf),
  );
  const own = events.filter((event) => mains.has(threadOf(event))).sort((a, b) => a.ts - b.ts);
  const isDriven = ({ args }: TraceEvent): boolean =>
    args.chrome_mojo_event_info?.mojo_interface_tag?.startsWith('blink.mojom.DevTools') === true;
  const tasks: Task[] = [];
  const marked = Object.fromEntries(marks.map((mark) => [mark, []])) as unknown as Traced<Mark>['marked'];
  let next = 0;
  for (const { ts, dur = 0, tdur = dur } of own.filter(({ name }) => name === 'RunTask')) {
    while (next < own.length && (own[next] as TraceEvent).ts < ts) next++;
    let isAsked = false;
    for (; next < own.length && (own[next] as TraceEvent).ts <= ts + dur; next++) {
      const event = own[next] as TraceEvent;
      isAsked ||= isDriven(event);
      if (Object.hasOwn(marked, event.name)) marked[event.name as Mark].push({ at: event.ts, task: ts });
    }
    if (!isAsked) tasks.push({ at: ts, ms: dur / 1000, workedMs: tdur / 1000 });
  }
  if (tasks.length === 0) throw new Error('The trace has no tasks of a page');
  return { tasks, marked };
}

async function ended(session: CDPSession): Promise<void> {
  const complete = new Promise<void>((resolve) => session.once('Tracing.tracingComplete', () => resolve()));
  await session.send('Tracing.end');
  await complete;
}
