/** Looks at a picture file and decodes it, where it can be ended at any time. */
import { problemError, problemOf } from '@shared/problem/index.ts';
import {
  checkPictureFile,
  decodePhoto,
  MOST_KEPT_MEGAPIXELS,
  readSvg,
  type Picture,
  type PictureKind,
} from '@shared/reading/index.ts';
import { givenPicture } from '../given.ts';
import { reduced } from '../small-canvas.ts';
import { decodedByBrowser, type Checked } from './by-browser.ts';
import type { Answers, Asked, Decoded, FromWorker } from './messages.ts';

const port = self as unknown as { postMessage(message: FromWorker, transfer?: Transferable[]): void };

self.addEventListener('message', ({ data }: MessageEvent<Asked>) => {
  port.postMessage({ kind: 'began' });
  answerTo(data).then(
    (value) => port.postMessage({ kind: 'ended', outcome: { ok: true, value } }, buffersOf(value)),
    (thrown: unknown) => port.postMessage({ kind: 'ended', outcome: { ok: false, problem: problemOf(thrown) } }),
  );
});

async function answerTo(asked: Asked): Promise<Answers[keyof Answers]> {
  return asked.kind === 'given' ? givenPicture(asked.bytes, asked.name) : pixelsOf(asked.bytes);
}

async function pixelsOf(bytes: Uint8Array<ArrayBuffer>): Promise<Decoded> {
  const file = checkPictureFile(bytes);
  switch (file.kind) {
    case 'SVG':
      return { kind: 'SVG', drawing: readSvg(svgText(bytes)) };
    case 'PBM':
      return shown('PBM', decodePhoto(bytes).picture);
    default:
      if (isLarge(file)) return shown(file.kind, decodedByRows(bytes, file));
      return { kind: file.kind, ...(await decodedByBrowser(bytes, file)) };
  }
}

function shown(kind: Exclude<PictureKind, 'SVG'>, picture: Picture): Decoded {
  return { kind, picture, ...reduced(picture) };
}

/** A PNG may be nearly as many bytes as it has pixels, which the browser would hold beside its copies of these. */
const MOST_PNG_MEGAPIXELS = 4;

/** True for what is left to our own decoders. */
const isLarge = ({ kind, width, height }: Checked): boolean =>
  width * height > (kind === 'PNG' ? MOST_PNG_MEGAPIXELS : MOST_KEPT_MEGAPIXELS) * 1e6;

/**
 * A browser holds all pixels of a picture several times over, 1.3 GB for 60
 * million. Of PNG and JPEG our own decoders keep no more than is used.
 */
function decodedByRows(bytes: Uint8Array<ArrayBuffer>, { kind, width, height }: Checked): Picture {
  if (kind === 'PNG' || kind === 'JPEG') return decodePhoto(bytes).picture;
  throw problemError('photo-too-large', { width, height, mostMegapixels: MOST_KEPT_MEGAPIXELS });
}

/** Pixels, and the bytes of a file that was only looked at, move to the window without being copied. */
function buffersOf(value: Answers[keyof Answers]): Transferable[] {
  if ('bytes' in value) return [value.bytes.buffer];
  if (!('picture' in value)) return [];
  const { picture, shown, small } = value;
  return [picture.rgba.buffer as ArrayBuffer, shown, ...(small ? [small.rgba.buffer as ArrayBuffer] : [])];
}

/** Throws `picture-broken` for what is not UTF-8. */
function svgText(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw problemError('picture-broken', { kind: 'SVG', damage: 'encoding' });
  }
}
