/**
 * How soon a person has an answer out of a 12-megapixel photo: from the press that gives its file to the first cells
 * that show and to those that are read exactly, against the browser's own decoder; and from the move of a corner to
 * what it changes, against frames, and against a full reading.
 *
 * Answers are told by what goes between the window and its workers, until the frame behind them is painted.
 */
import type { Page } from 'playwright';
import { sampleProject } from '@shared/project/index.ts';
import { restingBox } from '../e2e/at-rest.ts';
import { FilePanel } from '../e2e/file-panel.ts';
import { median, type Bar } from './bar.ts';
import type { Stand } from './built-window.ts';
import { isSlowed, roundsOf } from './slowed.ts';

const ROUNDS = 3;
/** From the file to the first cells: so many times what the browser takes to decode it. */
const MOST_DECODINGS = 5;
/** Frames until cells follow a corner. */
const MOST_FRAMES = 2;
/** Exact cells of a corner that rests, against the same from the file on. */
const MOST_OF_FULL = 0.5;
/** Moves of the hand on a corner; those at first come while the machine is still busy. */
const MOVES = 40;
/** From where files show until one is pressed. */
const CHOOSING_MS = 1500;
/** Beyond its bar by this a slowed page is. */
const BEYOND = 1.2;

/** An answer of the worker with cells: when it was asked for, and when it was painted, ms of the page's clock. */
interface Answered {
  readonly isQuick: boolean;
  readonly askedAt: number;
  readonly at: number;
}

/** What the page notes for the bench. */
interface Noted {
  readonly answers: Answered[];
  /** When the hand did it, by the name of the event. */
  readonly hand: Record<string, number[]>;
  /** How long each of these events is held up, ms. */
  readonly heldUp: Record<string, number>;
}

type NotingWindow = Window & { noted?: Noted };

/** Has a page note answers and the hand, from now on; its workers start later. */
export async function noting(page: Page): Promise<void> {
  await page.evaluate(() => {
    const noted: Noted = { answers: [], hand: {}, heldUp: {} };
    (window as NotingWindow).noted = noted;
    for (const name of ['pointerdown', 'pointermove', 'pointerup']) {
      window.addEventListener(
        name,
        ({ timeStamp }) => {
          (noted.hand[name] ??= []).push(timeStamp);
          const until = performance.now() + (noted.heldUp[name] ?? 0);
          while (performance.now() < until);
        },
        true,
      );
    }
    const { Worker } = window;
    window.Worker = class extends Worker {
      readonly #asked = new Map<number, Pick<Answered, 'isQuick' | 'askedAt'>>();

      constructor(...given: ConstructorParameters<typeof Worker>) {
        super(...given);
        this.addEventListener('message', ({ data }: MessageEvent) => {
          const asked = this.#asked.get(data?.id as number);
          const value = data?.kind === 'ended' && data.outcome?.ok ? data.outcome.value : null;
          if (!asked || !(value?.reading ?? value?.seen?.answer.reading)) return;
          // The frame that shows it is done when the first task behind it begins.
          requestAnimationFrame(() => {
            const behind = new MessageChannel();
            behind.port1.onmessage = () => noted.answers.push({ ...asked, at: performance.now() });
            behind.port2.postMessage(null);
          });
        });
      }

      override postMessage(message: unknown, given?: Transferable[] | StructuredSerializeOptions): void {
        const { kind, id, ask } = (message ?? {}) as {
          kind?: string;
          id?: number;
          ask?: 'glimpse' | { isQuick?: boolean };
        };
        const isQuick = ask === 'glimpse' || (typeof ask === 'object' ? ask?.isQuick : undefined);
        if (kind === 'ask' && id !== undefined && isQuick !== undefined) {
          this.#asked.set(id, { isQuick, askedAt: performance.now() });
        }
        super.postMessage(message, given as Transferable[]);
      }
    };
  });
}

/** From each `event` of the hand to the first answer that was asked for behind it, ms; once the last has one. */
async function answeredAfter(page: Page, event: string, isExact: boolean): Promise<readonly number[]> {
  const told = await page.waitForFunction(
    ({ event, isExact }) => {
      const { answers, hand } = (window as NotingWindow).noted as Noted;
      const after = (hand[event] ?? []).map((since) => {
        const first = answers.find(({ isQuick, askedAt }) => askedAt >= since && !(isExact && isQuick));
        return first ? first.at - since : null;
      });
      return (after.at(-1) ?? null) === null ? null : after.filter((ms) => ms !== null);
    },
    { event, isExact },
    { polling: 100, timeout: 60_000 },
  );
  return (await told.jsonValue()) as number[];
}

/** How long the browser takes to decode the file, ms, the shortest of several times. */
async function decodedIn(page: Page, file: Buffer): Promise<number> {
  return page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    let least = Infinity;
    for (let time = 0; time < 5; time++) {
      const start = performance.now();
      const image = await createImageBitmap(new Blob([bytes], { type: 'image/jpeg' }));
      least = Math.min(least, performance.now() - start);
      image.close();
    }
    return least;
  }, file.toString('base64'));
}

/** How long a frame takes that nothing holds up, ms. */
async function frameOf(page: Page): Promise<number> {
  return page.evaluate(async () => {
    const at: number[] = [];
    for (let frame = 0; frame < 21; frame++) at.push(await new Promise<number>(requestAnimationFrame));
    const took = at.slice(1).map((end, frame) => end - (at[frame] as number));
    return took.sort((one, other) => one - other)[took.length >> 1] as number;
  });
}

async function slowed(page: Page, event: string, ms: number): Promise<void> {
  if (!isSlowed()) return;
  await page.evaluate(
    ({ event, ms }) => {
      ((window as NotingWindow).noted as Noted).heldUp[event] = ms;
    },
    { event, ms: BEYOND * ms },
  );
}

/** The bars of the photo `name` in the stand's home folder. */
export async function photoAnswerBars({ open }: Stand, name: string, file: Buffer): Promise<Bar[]> {
  const decoding: number[] = [];
  const first: number[] = [];
  const full: number[] = [];
  const frames: number[] = [];
  const quick: number[] = [];
  const exact: number[] = [];
  for (let round = 0; round < roundsOf(ROUNDS); round++) {
    const page = await open(sampleProject());
    await noting(page);
    const decodes = await decodedIn(page, file);
    decoding.push(decodes);
    frames.push(await frameOf(page));
    await slowed(page, 'pointerdown', MOST_DECODINGS * decodes);
    await page.keyboard.press('Control+Shift+G');
    // Nobody chooses a file in less.
    await page.waitForTimeout(CHOOSING_MS);
    await new FilePanel(page).open(name);
    const last = async (event: string, isExact: boolean): Promise<number> =>
      (await answeredAfter(page, event, isExact)).at(-1) as number;
    first.push(await last('pointerdown', false));
    const whole = await last('pointerdown', true);
    full.push(whole);
    const ring = await restingBox(page.getByRole('button', { name: /^top left corner/ }));
    const [x, y] = [ring.x + ring.width / 2, ring.y + ring.height / 2];
    await slowed(page, 'pointermove', MOST_FRAMES * (frames.at(-1) as number));
    await slowed(page, 'pointerup', MOST_OF_FULL * whole);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let move = 1; move <= MOVES; move++) {
      // Frame after frame, as a hand does.
      await page.evaluate(() => new Promise(requestAnimationFrame));
      // There and back, but for a pixel: it stays a corner of this chart.
      const by = 1 + 12 * Math.sin((move / MOVES) * Math.PI);
      await page.mouse.move(x - by, y - by);
    }
    await page.mouse.up();
    exact.push(await last('pointerup', true));
    quick.push(...(await answeredAfter(page, 'pointermove', false)).slice(-MOVES));
    await page.context().close();
  }
  const compared = (ours: number[], against: number[]): Pick<Bar, 'ours' | 'against' | 'ratio'> => {
    const [one, other] = [median(ours), median(against)];
    return { ours: one, against: other, ratio: one / other };
  };
  return [
    {
      name: 'from a photo’s file to its first reading, against decoding it by the browser',
      kind: 'at most',
      limit: MOST_DECODINGS,
      ...compared(first, decoding),
    },
    {
      name: 'from a photo’s file to the exact reading, against decoding it by the browser',
      kind: 'figure',
      limit: null,
      ...compared(full, decoding),
    },
    {
      name: 'from the move of a corner to what it changes at preview size, against a frame',
      kind: 'at most',
      limit: MOST_FRAMES,
      ...compared(quick, frames),
    },
    {
      name: 'from letting a corner go to the exact reading, against that from the file on',
      kind: 'at most',
      limit: MOST_OF_FULL,
      ...compared(exact, full),
    },
  ];
}
