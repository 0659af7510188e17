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
  readonly args: { readonly name?: string; readonly chrome_mojo_event_info?: { readonly mojo_interface_tag?: string } };
}

export interface Task {
  /** From its beginning to its end. */
  readonly ms: number;
  /** What the thread worked meanwhile: less where a busy machine let it wait. */
  readonly workedMs: number;
}

/** The tasks of the page's main thread while `act` goes on, but those in which it answers whoever drives it. */
export async function tasksOf(page: Page, act: () => Promise<unknown>): Promise<Task[]> {
  const browser = page.context().browser();
  if (!browser) throw new Error('The page has a browser of its own');
  const session = await browser.newBrowserCDPSession();
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => events.push(...(value as unknown as TraceEvent[])));
  await session.send('Tracing.start', {
    traceConfig: { includedCategories: ['disabled-by-default-devtools.timeline', 'devtools.timeline', 'toplevel'] },
    transferMode: 'ReportEvents',
  });
  await act();
  await ended(session);
  await session.detach();
  const threadOf = ({ pid, tid }: TraceEvent): string => `${pid} ${tid}`;
  const mains = new Set(
    events.filter(({ name, args }) => name === 'thread_name' && args.name === 'CrRendererMain').map(threadOf),
  );
  const driven = events.filter(
    ({ args }) => args.chrome_mojo_event_info?.mojo_interface_tag?.startsWith('blink.mojom.DevTools') === true,
  );
  const tasks = events.filter((event) => event.name === 'RunTask' && mains.has(threadOf(event)));
  if (tasks.length === 0) throw new Error('The trace has no tasks of a page');
  return tasks
    .filter((task) => {
      const isInside = (event: TraceEvent): boolean =>
        threadOf(event) === threadOf(task) && event.ts >= task.ts && event.ts <= task.ts + (task.dur ?? 0);
      return !driven.some(isInside);
    })
    .map(({ dur = 0, tdur = dur }) => ({ ms: dur / 1000, workedMs: tdur / 1000 }));
}

async function ended(session: CDPSession): Promise<void> {
  const complete = new Promise<void>((resolve) => session.once('Tracing.tracingComplete', () => resolve()));
  await session.send('Tracing.end');
  await complete;
}
