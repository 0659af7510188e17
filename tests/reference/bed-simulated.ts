/**
 * A knitting machine's bed, simulated.
 *
 * Written from what the trade knows and from nothing of the program: it reads
 * a row list as a knitter would, and knits it needle by needle. All common
 * practice, no source:
 *
 * - Needles are numbered outwards from the centre, and there is no needle 0.
 * - The carriage goes across and back. It cannot start a row from the side
 *   where it did not end the last one.
 * - A needle in work knits each row: contrast if it is selected, main if not.
 *   Its old loop is knocked off into the fabric.
 * - A wrap goes round an unselected needle next to the outermost selected one,
 *   on the carriage's side, so that no gap opens there.
 * - The purl side faces the knitter, so the knit side is seen mirrored.
 */

/** The finished face, rows from the cast-on up, stitches from the left as seen; null beside the piece. */
export type Picture = readonly (readonly (string | null)[])[];

/** The yarn that unselected needles knit. */
export const MAIN = 'main';

/** What a knitter would stop at. */
export class KnittingError extends Error {
  constructor(row: string, what: string) {
    super(`Row ${row}: ${what}`);
  }
}

export interface Knitted {
  readonly picture: Picture;
  /** Wraps made before each row, as needle labels. */
  readonly wraps: readonly (readonly string[])[];
}

/**
 * Knits a row list. Throws {@link KnittingError} at the first thing that
 * cannot be done at a machine, a wrap in the wrong place among them.
 */
export function knit(csv: string, finishedFace: 'knit' | 'purl'): Knitted {
  const [header = [], ...lines] = readCsv(csv);
  const column = (title: string): number => {
    const at = header.indexOf(title);
    if (at < 0) throw new KnittingError('heading', `no column "${title}" among ${header.join(', ')}`);
    return at;
  };
  const yarns = header.filter((title) => title.startsWith('Needles in '));
  const bed = new Bed();
  const wraps: string[][] = [];
  lines.forEach((cells, index) => {
    const cell = (title: string): string => cells[column(title)] ?? '';
    const row = cell('Row');
    if (row !== String(index + 1)) throw new KnittingError(row, `the row counter stands at ${index}`);
    bed.putInWork(row, cell('Stitches on'));
    const selected = new Map<number, string>();
    for (const title of yarns) {
      for (const needle of needlesIn(row, cell(title))) {
        if (selected.has(needle)) throw new KnittingError(row, `needle ${labelOf(needle)} is to knit two yarns`);
        selected.set(needle, title.slice('Needles in '.length));
      }
    }
    const from = cell('Carriage at');
    const wrapped = needlesIn(row, cell('Wrap'));
    for (const needle of wrapped) bed.wrap(row, needle, from, selected);
    wraps.push(wrapped.map(labelOf));
    bed.knitRow(row, from, selected);
  });
  return { picture: bed.finishedFace(finishedFace), wraps };
}

class Bed {
  /** Stitches on, and the yarn of the loop on each. */
  private readonly loops = new Map<number, string>();
  /** Rows knocked off or still on the needles, the first row first. */
  private readonly fabric: Map<number, string>[] = [];
  private carriage: string | null = null;

  /** Casts on, increases and decreases until the needles of the row are in work. */
  putInWork(row: string, span: string): void {
    if (span === '') throw new KnittingError(row, 'nothing is cast on');
    const needles = needlesIn(row, span);
    // A stitch taken off moves to its neighbour; a needle put in work gets a new loop.
    for (const needle of this.loops.keys()) if (!needles.includes(needle)) this.loops.delete(needle);
    for (const needle of needles) if (!this.loops.has(needle)) this.loops.set(needle, MAIN);
  }

  /** Loops a strand over an unselected needle at the edge of the figure. */
  wrap(row: string, needle: number, carriage: string, selected: ReadonlyMap<number, string>): void {
    const name = labelOf(needle);
    if (!this.loops.has(needle)) throw new KnittingError(row, `wrapped needle ${name} is not in work`);
    if (selected.has(needle)) throw new KnittingError(row, `wrapped needle ${name} is selected`);
    const neighbour = carriage === 'left' ? needle + 1 : needle - 1;
    if (!selected.has(neighbour)) {
      throw new KnittingError(
        row,
        `wrapped needle ${name} has no selected needle beyond it, seen from the ${carriage}`,
      );
    }
  }

  knitRow(row: string, from: string, selected: ReadonlyMap<number, string>): void {
    if (from !== 'left' && from !== 'right') throw new KnittingError(row, `"${from}" is no side`);
    if (this.carriage !== null && this.carriage !== from) {
      throw new KnittingError(row, `the carriage stands at the ${this.carriage}, not at the ${from}`);
    }
    for (const needle of selected.keys()) {
      if (!this.loops.has(needle)) throw new KnittingError(row, `selected needle ${labelOf(needle)} is not in work`);
    }
    const knitted = new Map<number, string>();
    const inOrder = [...this.loops.keys()].sort((a, b) => (from === 'left' ? a - b : b - a));
    for (const needle of inOrder) {
      const yarn = selected.get(needle) ?? MAIN;
      this.loops.set(needle, yarn);
      knitted.set(needle, yarn);
    }
    this.fabric.push(knitted);
    this.carriage = from === 'left' ? 'right' : 'left';
  }

  finishedFace(face: 'knit' | 'purl'): Picture {
    const needles = this.fabric.flatMap((row) => [...row.keys()]);
    const first = needles.reduce((least, needle) => Math.min(least, needle), Infinity);
    const last = needles.reduce((most, needle) => Math.max(most, needle), -Infinity);
    return this.fabric.map((row) => {
      const asKnitted = Array.from({ length: last - first + 1 }, (_, at) => row.get(first + at) ?? null);
      return face === 'knit' ? asKnitted.reverse() : asKnitted;
    });
  }
}

/** `L48-L40 L38 R12-R47` as positions without a gap at the centre, in the order written. */
function needlesIn(row: string, text: string): number[] {
  return text
    .split(' ')
    .filter((part) => part !== '')
    .flatMap((part) => {
      const [first, last = first] = part.split('-').map((name) => positionOf(row, name)) as [number, number?];
      return Array.from({ length: last - first + 1 }, (_, at) => first + at);
    });
}

/** L1 stands left of the centre, R1 right of it, and nothing between them. */
function positionOf(row: string, name: string): number {
  const [, side, number] = /^([LR])([1-9]\d*)$/.exec(name) ?? [];
  if (side === undefined) throw new KnittingError(row, `"${name}" is no needle`);
  return side === 'L' ? -Number(number) : Number(number) - 1;
}

function labelOf(position: number): string {
  return position < 0 ? `L${-position}` : `R${position + 1}`;
}

/** RFC 4180: fields parted by commas, lines by CR LF; a field in quotes may hold both, and quotes doubled. */
export function readCsv(text: string): string[][] {
  const lines: string[][] = [];
  let line: string[] = [];
  let field = '';
  let isQuoted = false;
  for (let at = 0; at < text.length; at++) {
    const letter = text.charAt(at);
    if (isQuoted) {
      if (letter !== '"') field += letter;
      else if (text.charAt(at + 1) === '"') field += text.charAt(at++);
      else isQuoted = false;
    } else if (letter === '"' && field === '') isQuoted = true;
    else if (letter === ',') {
      line.push(field);
      field = '';
    } else if (letter === '\r' && text.charAt(at + 1) === '\n') {
      lines.push([...line, field]);
      line = [];
      field = '';
      at++;
    } else field += letter;
  }
  if (isQuoted) throw new Error('A quoted field does not end');
  if (field !== '' || line.length > 0) lines.push([...line, field]);
  return lines;
}
