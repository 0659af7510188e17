/** Looks at a picture file and decodes it, where it can be ended at any time. */
import { problemOf } from '@shared/problem/index.ts';
import { checkPictureFile, decodePhoto, readSvg } from '@shared/reading/index.ts';
import { givenPicture } from '../given.ts';
import { decodedByBrowser } from './by-browser.ts';
import type { Answers, Asked, Decoded, FromWorker } from './messages.ts';
import { svgText } from './svg-text.ts';

const port = self as unknown as { postMessage(said: FromWorker, transfer?: Transferable[]): void };

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

async function pixelsOf(bytes: Uint8Array): Promise<Decoded> {
  const file = checkPictureFile(bytes);
  switch (file.kind) {
    case 'SVG':
      return { kind: 'SVG', drawing: readSvg(svgText(bytes)) };
    case 'PBM':
      return { kind: 'PBM', picture: decodePhoto(bytes).picture };
    default:
      return { kind: file.kind, picture: await decodedByBrowser(bytes, file) };
  }
}

/** Pixels move to the window without being copied. */
function buffersOf(value: Answers[keyof Answers]): Transferable[] {
  return 'picture' in value ? [value.picture.rgba.buffer as ArrayBuffer] : [];
}
