/**
 * Reads a PBM picture, plain (P1) or packed (P4), after the Netpbm format
 * description: 1 is black, packed rows begin at a whole byte with the most
 * significant bit first, and `#` starts a comment that ends with its line.
 * Of several pictures in one file the first is read.
 */
import { problemError } from '../problem/index.ts';
import { assertMotifSize, BLACK, WHITE, type Pixels } from './pixels.ts';

const KIND = 'PBM';

/** True for bytes that begin as a PBM does. */
export function isPbm(bytes: Uint8Array): boolean {
  return bytes[0] === code('P') && (bytes[1] === code('1') || bytes[1] === code('4')) && !isDigit(bytes[2]);
}

/**
 * Throws `picture-truncated` or `picture-broken`, and what `assertSize` throws
 * for the size that is declared: for a motif `picture-too-large`.
 */
export function readPbm(bytes: Uint8Array, assertSize = assertMotifSize): Pixels {
  const source = new Source(bytes);
  const width = source.readSize();
  const height = source.readSize();
  assertSize(width, height);
  const colours = bytes[1] === code('1') ? source.readPlain(width * height) : source.readPacked(width, height);
  return { width, height, colours };
}

/** Walks the bytes after the two that name the format. */
class Source {
  private at = 2;

  constructor(private readonly bytes: Uint8Array) {}

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

  /** One character a pixel, 0 or 1, blanks between them or not. */
  readPlain(count: number): Uint32Array {
    const colours = new Uint32Array(count);
    for (let pixel = 0; pixel < count; pixel++) {
      let character = this.next();
      while (isBlank(character)) character = this.next();
      if (character !== code('0') && character !== code('1')) {
        throw problemError('picture-broken', { kind: KIND, damage: 'pixels' });
      }
      colours[pixel] = character === code('1') ? BLACK : WHITE;
    }
    return colours;
  }

  readPacked(width: number, height: number): Uint32Array {
    const rowBytes = Math.ceil(width / 8);
    if (this.at + rowBytes * height > this.bytes.length) throw problemError('picture-truncated', { kind: KIND });
    const colours = new Uint32Array(width * height);
    for (let row = 0; row < height; row++) {
      for (let column = 0; column < width; column++) {
        const byte = this.bytes[this.at + row * rowBytes + (column >> 3)] as number;
        colours[row * width + column] = byte & (0x80 >> (column & 7)) ? BLACK : WHITE;
      }
    }
    return colours;
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
