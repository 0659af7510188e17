/**
 * The pixels of a JPEG, row by row (ITU-T T.81; colours after JFIF, T.871).
 *
 * Where one scan holds all components, as cameras write it, no more than one
 * row of MCUs is ever held. Where coefficients come in several scans all of
 * them must be kept, two bytes each, and their number is bounded.
 */
import { problemError } from '../../problem/index.ts';
import { readerInPasses, readSequential, type ComponentState, type ReadBlock, type ScanRange } from './jpeg-blocks.ts';
import { rgbaOf } from './jpeg-colour.ts';
import { JpegBits } from './jpeg-huffman.ts';
import { samplesOf, scaledTable } from './jpeg-idct.ts';
import {
  assertJpegBits,
  brokenJpeg,
  MARKER,
  type JpegComponent,
  type JpegFrame,
  type JpegSegment,
  type JpegSegments,
} from './jpeg-segments.ts';
import { JpegTables } from './jpeg-tables.ts';
import type { TakeRow } from './bytes.ts';

/** The most coefficients that are kept for a picture in several scans: 96 MB, for 16 million pixels of three full components. */
const MOST_KEPT_COEFFICIENTS = 48 * 1024 * 1024;

/** A component with its blocks laid out in whole MCUs (A.2). */
interface Plane {
  readonly component: JpegComponent;
  /** Blocks that hold pixels. */
  readonly columns: number;
  readonly rows: number;
  /** Blocks in a row of MCUs, those that only fill it up included. */
  readonly stride: number;
  /** Of one row of MCUs, or of the whole picture. */
  readonly coefficients: Int16Array;
  /** Samples of one row of MCUs. */
  readonly samples: Uint8ClampedArray;
  /** By coefficient: the bit down to which it has come in passes; -1 for not yet. */
  readonly sentDownTo: Int8Array;
}

interface Scan {
  readonly planes: readonly Plane[];
  readonly states: readonly ComponentState[];
  readonly range: ScanRange;
  readonly bits: JpegBits;
  readonly restartInterval: number;
}

/** True if all coefficients must be kept until the last scan. */
export function comesInPasses({ frame, segments }: JpegSegments): boolean {
  const scan = segments.find(({ marker }) => marker === MARKER.scan);
  return frame.isProgressive || scan?.body[0] !== frame.components.length;
}

/** Throws `picture-truncated`, `picture-broken`, or `photo-in-passes` for more in several scans than is kept. */
export function readJpegPixels(jpeg: JpegSegments, take: TakeRow): void {
  assertJpegBits(jpeg);
  const { frame, segments } = jpeg;
  const tables = new JpegTables();
  const isKept = comesInPasses(jpeg);
  const planes = planesOf(frame, isKept);
  const mcusDown = Math.ceil(frame.height / (8 * frame.mostDown));
  let isDone = false;
  for (const segment of segments) {
    if (segment.bits === null) {
      tables.take(segment);
      continue;
    }
    const scan = scanOf(segment, segment.bits, frame, planes, tables);
    if (isKept) readInPasses(scan, frame);
    else {
      if (isDone) throw brokenJpeg('order');
      const show = rowsOf(frame, planes, tables, take);
      const restart = restarts(scan);
      for (let mcuRow = 0; mcuRow < mcusDown; mcuRow++) {
        for (const { coefficients } of planes) coefficients.fill(0);
        readMcuRow(scan, frame, 0, readSequential, restart);
        if (scan.bits.isPastEnd) throw brokenJpeg('pixels');
        show(mcuRow, 0);
      }
    }
    isDone = true;
  }
  if (!isKept) return;
  if (planes.some(({ sentDownTo }) => sentDownTo[0] === -1)) throw brokenJpeg('pixels');
  const show = rowsOf(frame, planes, tables, take);
  for (let mcuRow = 0; mcuRow < mcusDown; mcuRow++) show(mcuRow, mcuRow);
}

function planesOf(frame: JpegFrame, isKept: boolean): Plane[] {
  const { width, height, components, mostAcross, mostDown } = frame;
  const mcusAcross = Math.ceil(width / (8 * mostAcross));
  const keptRows = isKept ? Math.ceil(height / (8 * mostDown)) : 1;
  const count = components.reduce((sum, { across, down }) => sum + mcusAcross * across * keptRows * down * 64, 0);
  if (isKept && count > MOST_KEPT_COEFFICIENTS) {
    // Of four inks fewer pixels than of three colours, and fewer yet where blocks stick out of a narrow picture.
    const most = (MOST_KEPT_COEFFICIENTS * width * height) / count;
    throw problemError('photo-in-passes', { width, height, mostMegapixels: Math.floor(most / 1e6) });
  }
  return components.map((component) => {
    const stride = mcusAcross * component.across;
    return {
      component,
      columns: Math.ceil((width * component.across) / mostAcross / 8),
      rows: Math.ceil((height * component.down) / mostDown / 8),
      stride,
      coefficients: new Int16Array(stride * keptRows * component.down * 64),
      samples: new Uint8ClampedArray(stride * 8 * component.down * 8),
      sentDownTo: new Int8Array(64).fill(-1),
    };
  });
}

function scanOf(
  { body }: JpegSegment,
  bits: Uint8Array,
  { isProgressive }: JpegFrame,
  all: readonly Plane[],
  tables: JpegTables,
): Scan {
  const count = body[0] as number;
  const planes: Plane[] = [];
  const states: ComponentState[] = [];
  const [first, last, approximation] = body.subarray(1 + 2 * count) as unknown as [number, number, number];
  const range = { first, last, high: approximation >> 4, low: approximation & 15 };
  for (let index = 0; index < count; index++) {
    const [id, numbers] = body.subarray(1 + 2 * index, 3 + 2 * index) as unknown as [number, number];
    const plane = all.find(({ component }) => component.id === id) as Plane;
    planes.push(plane);
    const needsDc = first === 0 && range.high === 0;
    const needsAc = last > 0;
    states.push({
      dc: needsDc ? tables.huffmanFor(0, numbers >> 4) : null,
      ac: needsAc ? tables.huffmanFor(1, numbers & 15) : null,
      before: 0,
    });
    // Each coefficient comes once, then bit by bit (G.1.1.1.2): so the scans of a file cannot go on without end.
    for (let k = first; k <= last; k++) {
      const sent = plane.sentDownTo[k] as number;
      const isNext = range.high === 0 ? sent === -1 : sent === range.high && range.low === range.high - 1;
      if (!isNext) throw brokenJpeg('order');
      plane.sentDownTo[k] = range.low;
    }
    if (isProgressive && first > 0 && plane.sentDownTo[0] === -1) throw brokenJpeg('order');
  }
  return { planes, states, range, bits: new JpegBits(bits), restartInterval: tables.restartInterval };
}

/** To be called before each MCU but the first: goes over the restart marker where one is due (E.2.4). */
function restarts({ bits, states, restartInterval }: Scan, atRestart: () => void = () => {}): () => void {
  let done = -1;
  return () => {
    done++;
    if (restartInterval === 0 || done === 0 || done % restartInterval !== 0) return;
    bits.restart((done / restartInterval - 1) & 7);
    for (const state of states) state.before = 0;
    atRestart();
  };
}

/** All blocks of a row of MCUs; `mcuRow` counts among those that are kept. */
function readMcuRow(
  { planes, states, bits }: Scan,
  frame: JpegFrame,
  mcuRow: number,
  read: ReadBlock,
  restart: () => void,
): void {
  const mcusAcross = Math.ceil(frame.width / (8 * frame.mostAcross));
  for (let mcu = 0; mcu < mcusAcross; mcu++) {
    restart();
    for (let index = 0; index < planes.length; index++) {
      const { component, stride, coefficients } = planes[index] as Plane;
      for (let row = 0; row < component.down; row++) {
        const start = (mcuRow * component.down + row) * stride + mcu * component.across;
        for (let column = 0; column < component.across; column++) {
          read(bits, states[index] as ComponentState, coefficients, (start + column) * 64);
        }
      }
    }
  }
}

/** One scan of several. Blocks of a component alone come row by row, without those that only fill up (A.2.2). */
function readInPasses(scan: Scan, frame: JpegFrame): void {
  const bands = { left: 0 };
  const read = frame.isProgressive ? readerInPasses(scan.range, bands) : readSequential;
  const restart = restarts(scan, () => (bands.left = 0));
  const [only] = scan.planes;
  if (scan.planes.length > 1 || only === undefined) {
    const mcusDown = Math.ceil(frame.height / (8 * frame.mostDown));
    for (let mcuRow = 0; mcuRow < mcusDown; mcuRow++) {
      readMcuRow(scan, frame, mcuRow, read, restart);
      if (scan.bits.isPastEnd) throw brokenJpeg('pixels');
    }
    return;
  }
  const state = scan.states[0] as ComponentState;
  for (let row = 0; row < only.rows; row++) {
    for (let column = 0; column < only.columns; column++) {
      restart();
      read(scan.bits, state, only.coefficients, (row * only.stride + column) * 64);
    }
    if (scan.bits.isPastEnd) throw brokenJpeg('pixels');
  }
}

/** Turns the coefficients of a row of MCUs, kept from `keptRow` on, into rows of pixels. */
function rowsOf(
  frame: JpegFrame,
  planes: readonly Plane[],
  tables: JpegTables,
  take: TakeRow,
): (mcuRow: number, keptRow: number) => void {
  const { width, height, mostDown } = frame;
  const scaled = planes.map(({ component }) => {
    const quant = tables.quant[component.quantTable];
    if (quant === undefined) throw brokenJpeg('pixels');
    return scaledTable(quant);
  });
  const rgba = new Uint8Array(width * 4);
  const toRgba = rgbaOf(
    frame,
    planes.map(({ samples, stride }) => ({ samples, stride: stride * 8 })),
    tables.adobeTransform,
  );
  const rowsInMcu = 8 * mostDown;
  return (mcuRow, keptRow) => {
    planes.forEach(({ component, stride, coefficients, samples }, index) => {
      for (let row = 0; row < component.down; row++) {
        const start = (keptRow * component.down + row) * stride;
        for (let column = 0; column < stride; column++) {
          samplesOf(
            coefficients,
            (start + column) * 64,
            scaled[index] as Float32Array,
            samples,
            row * 8 * stride * 8 + column * 8,
            stride * 8,
          );
        }
      }
    });
    for (let row = 0; row < rowsInMcu && mcuRow * rowsInMcu + row < height; row++) {
      toRgba(row, rgba);
      take(mcuRow * rowsInMcu + row, rgba, 0, 1, width);
    }
  };
}
