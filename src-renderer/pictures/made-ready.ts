/**
 * The workers that a picture needs, made ready before it is there: while a person still chooses its file, or while it
 * is looked at. A worker takes a tenth of a second to come up, and the code that sees a chart at a glance runs three
 * times as long before the browser has compiled it as after.
 */
import { blankPicture, type Picture } from '@shared/reading/index.ts';
import { startWorker, type Helper } from '../worker/index.ts';
import DecodingWorker from './decoding/decode.worker.ts?worker&inline';

/** What nobody takes for so long is ended: the file was none for them, or none was chosen. */
const KEPT_MS = 60_000;

let decoder: Worker | null = null;
let glancer: Promise<Worker> | null = null;
let untaken: ReturnType<typeof setTimeout> | undefined;

/** Has both workers come up. */
export function getReady(): void {
  keepDecoder(decoder ?? new DecodingWorker());
  if (glancer) return;
  const started = practised();
  glancer = started;
  // Whoever wants one then starts it, and hears why it does not come.
  started.catch(() => {
    if (glancer === started) glancer = null;
  });
}

/** A worker that decodes, for the caller alone. */
export function takeDecoder(): Worker {
  const taken = decoder ?? new DecodingWorker();
  decoder = null;
  return taken;
}

/** One that is wanted again. */
export function keepDecoder(answered: Worker): void {
  if (answered !== decoder) decoder?.terminate();
  decoder = answered;
  clearTimeout(untaken);
  untaken = setTimeout(letGo, KEPT_MS);
}

function letGo(): void {
  decoder?.terminate();
  glancer?.then((worker) => worker.terminate()).catch(() => undefined);
  decoder = glancer = null;
}

/** A worker that has seen a chart already, for the caller alone. Rejects with what `startWorker` rejects with. */
export async function takeGlancer(): Promise<Helper<'chart'>> {
  const taken = glancer ?? startWorker();
  glancer = null;
  return taken;
}

/** No question of a client is numbered so: what is answered to it nobody hears. */
const UNHEARD = -1;

async function practised(): Promise<Worker> {
  const worker = await startWorker();
  const asked: Parameters<Helper<'chart'>['postMessage']>[0] = {
    kind: 'ask',
    id: UNHEARD,
    job: 'chart',
    given: { value: squaredPaper() },
    ask: 'glimpse',
  };
  worker.postMessage(asked);
  return worker;
}

/** Lines this far apart, in pixels, on as much paper as a small copy of a photo has at least. */
const CELL = 11;
const [WIDTH, HEIGHT] = [520, 390];
const [PAPER, LINE, FILLED] = [225, 120, 90];

/** A chart of two yarns that fills most of a picture. */
function squaredPaper(): Picture {
  const picture = blankPicture(WIDTH, HEIGHT);
  picture.rgba.fill(255);
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const [column, row] = [Math.floor(x / CELL), Math.floor(y / CELL)];
      const isOn = column >= 2 && row >= 2 && x < WIDTH - 3 * CELL && y < HEIGHT - 3 * CELL;
      const isLine = x % CELL === 0 || y % CELL === 0;
      const bright = !isOn ? PAPER : isLine ? LINE : (column * row) % 3 === 0 ? FILLED : PAPER;
      picture.rgba.fill(bright, (y * WIDTH + x) * 4, (y * WIDTH + x) * 4 + 3);
    }
  }
  return picture;
}
