/**
 * Reads a PBM picture, plain (P1) or packed (P4), after the Netpbm format
 * description: 1 is black, packed rows begin at a whole byte with the most
 * significant bit first, and `#` starts a comment that ends with its line.
 * Of several pictures in one file the first is read.
 */
import { problemError } from '../../problem/index.ts';
import type { TakeRow } from './bytes.ts';

const KIND = 'PBM';

export interface PbmHeader {
  readonly width: number;
  readonly height: number;
  readonly isPacked: boolean;
  /** Where the pixels begin. */
  readonly at: number;
}

/** True for bytes that begin as a PBM does. */
export function isPbm(bytes: Uint8Array): boolean {
  return bytes[0] === code('P') && (bytes[1] === code('1') || bytes[1] === code('4')) && !isDigit(bytes[2]);
}

/** Throws `picture-truncated` or `picture-broken`. Whether all pixels are there is for {@link assertPbmLength}. */
export function readPbmHeader(bytes: Uint8Array): PbmHeader {
  const source = new Source(bytes, 2);
  const width = source.readSize();
  const height = source.readSize();
  return { width, height, isPacked: bytes[1] === code('4'), at: source.at };
}

/** Throws `picture-truncated` for fewer bytes than the pixels take: an eighth each, or a character. */
export function assertPbmLength(bytes: Uint8Array, { width, height, isPacked, at }: PbmHeader): void {
  const least = isPacked ? Math.ceil(width / 8) * height : width * height;
  if (at + least > bytes.length) throw problemError('picture-truncated', { kind: KIND });
}

/** Throws `picture-truncated` or `picture-broken`. */
export function readPbmPixels(bytes: Uint8Array, header: PbmHeader, take: TakeRow): void {
  assertPbmLength(bytes, header);
  const { width, height, isPacked, at } = header;
  const source = new Source(bytes, at);
  const rgba = new Uint8Array(width * 4).fill(255);
  const rowBytes = Math.ceil(width / 8);
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      const isBlack = isPacked
        ? ((bytes[at + row * rowBytes + (column >> 3)] as number) & (0x80 >> (column & 7))) !== 0
        : source.readPixel();
      rgba.fill(isBlack ? 0 : 255, column * 4, column * 4 + 3);
    }
    take(row, rgba, 0, 1, width);
  }
}

/** Walks the characters of the header and of plain pixels. */
class Source {
  constructor(
    private readonly bytes: Uint8Array,
    public at: number,
  ) {}

  /** A width or height, and the one character that ends it. */
  readSize(): number {
    let character = this.next();
    while (isBlank(character)) character = this.next();
    let size = 0;
    while (isDigit(character)) {
      size = size * 10 + (character - code('0'));
      // Far past any limit already; stops the sum before it loses whole numbers.
      if (size > 1e9) break;
      character = this.next();
    }
    if (!isBlank(character) && size <= 1e9) throw problemError('picture-broken', { kind: KIND, damage: 'header' });
    if (size === 0) throw problemError('picture-broken', { kind: KIND, damage: 'header' });
    return size;
  }

  /** One character a pixel, blanks between them or not; true for black. */
  readPixel(): boolean {
    let character = this.next();
    while (isBlank(character)) character = this.next();
    if (character !== code('0') && character !== code('1')) {
      throw problemError('picture-broken', { kind: KIND, damage: 'pixels' });
    }
    return character === code('1');
  }

  /** The next character; a comment counts as the end of line that closes it. */
  private next(): number {
    let character = this.take();
    if (character === code('#')) {
      while (character !== code('\n') && character !== code('\r')) character = this.take();
    }
    return character;
  }

  private take(): number {
    const character = this.bytes[this.at++];
    if (character === undefined) throw problemError('picture-truncated', { kind: KIND });
    return character;
  }
}

function code(character: string): number {
  return character.charCodeAt(0);
}

function isDigit(character: number | undefined): character is number {
  return character !== undefined && character >= code('0') && character <= code('9');
}

/** Blank, tab, line feed, vertical tab, form feed or carriage return. */
function isBlank(character: number): boolean {
  return character === 0x20 || (character >= 0x09 && character <= 0x0d);
}
