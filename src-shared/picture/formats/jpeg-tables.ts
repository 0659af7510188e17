/** The tables of a JPEG as they stand where a scan begins (ITU-T T.81, B.2.4). */
import { viewOf } from './bytes.ts';
import { huffmanTable, type HuffmanTable } from './jpeg-huffman.ts';
import { brokenJpeg, MARKER, type JpegSegment } from './jpeg-segments.ts';

export class JpegTables {
  readonly quant: (Uint16Array | undefined)[] = [];
  /** MCUs between two restart markers; 0 for none. */
  restartInterval = 0;
  /** What Adobe's segment says of the colours: 0 as they are, 1 YCbCr, 2 YCCK; null if there is none. */
  adobeTransform: number | null = null;
  /** Bodies by class · 4 + number; made into tables only where a scan uses them. */
  private readonly huffman: ({ readonly counts: Uint8Array; readonly symbols: Uint8Array } | undefined)[] = [];

  /** Throws `picture-broken`. */
  take({ marker, body }: JpegSegment): void {
    if (marker === MARKER.quantTables) this.takeQuant(body);
    else if (marker === MARKER.huffmanTables) this.takeHuffman(body);
    else if (marker === MARKER.restartInterval) {
      if (body.length !== 2) throw brokenJpeg('header');
      this.restartInterval = viewOf(body).getUint16(0);
    } else if (
      marker === MARKER.app14 &&
      body.length >= 12 &&
      String.fromCharCode(...body.subarray(0, 5)) === 'Adobe'
    ) {
      this.adobeTransform = body[11] as number;
    }
  }

  /** Table `number` for DC (class 0) or AC (class 1), or null. */
  huffmanFor(kind: 0 | 1, number: number): HuffmanTable | null {
    const made = this.huffman[kind * 4 + number];
    return made === undefined ? null : huffmanTable(made.counts, made.symbols);
  }

  private takeQuant(body: Uint8Array): void {
    for (let at = 0; at < body.length;) {
      const head = body[at++] as number;
      const bytesEach = head >> 4 === 0 ? 1 : 2;
      if (head >> 4 > 1 || (head & 15) > 3 || at + 64 * bytesEach > body.length) throw brokenJpeg('header');
      const view = viewOf(body);
      const start = at;
      this.quant[head & 15] = Uint16Array.from({ length: 64 }, (_, k) =>
        bytesEach === 1 ? view.getUint8(start + k) : view.getUint16(start + 2 * k),
      );
      at += 64 * bytesEach;
    }
  }

  private takeHuffman(body: Uint8Array): void {
    for (let at = 0; at < body.length;) {
      const head = body[at] as number;
      const counts = body.subarray(at + 1, at + 17);
      const total = counts.reduce((sum, count) => sum + count, 0);
      const end = at + 17 + total;
      if (head >> 4 > 1 || (head & 15) > 3 || total > 256 || end > body.length) throw brokenJpeg('header');
      this.huffman[(head >> 4) * 4 + (head & 15)] = { counts, symbols: body.subarray(at + 17, end) };
      at = end;
    }
  }
}
