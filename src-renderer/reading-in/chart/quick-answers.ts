/**
 * What is told at once of a chart on a photo, out of a small copy of it, by a
 * worker of its own that nothing exact holds up. One question is out at a time;
 * of what changes meanwhile the last is asked then.
 */
import type { Corners, FoundChart, Picture } from '@shared/reading/index.ts';
import { copiedPicture } from '../../pictures/copied.ts';
import type { DecodedPicture } from '../../pictures/decode.ts';
import { takeGlancer } from '../../pictures/made-ready.ts';
import { WorkerClient, type ChartAnswer, type ChartQuestion } from '../../worker/index.ts';

/** A chart that was seen at a glance, its corners in pixels of the photo. */
export interface Glimpsed {
  readonly chart: FoundChart;
  readonly answer: ChartAnswer;
}

export class QuickAnswers {
  readonly #client = new WorkerClient('chart', null, takeGlancer, copiedPicture);
  readonly #small: Picture;
  /** Pixels of the copy in one of the photo. */
  readonly #scale: number;
  #isOut = false;
  #wanted: ChartQuestion | null = null;

  constructor(
    private readonly photo: DecodedPicture,
    private readonly heard: (answer: ChartAnswer) => void,
  ) {
    this.#small = photo.small ?? photo;
    this.#scale = this.#small.width / photo.width;
  }

  /** Looks for a chart; `done` hears null where none is seen, or the photo is so small that the exact look is as quick. */
  glimpse(done: (seen: Glimpsed | null) => void): void {
    if (!this.photo.small) {
      done(null);
      return;
    }
    this.#client.ask(this.photo.small, 'glimpse', {
      answer: (answer) => {
        if (!('seen' in answer)) return;
        const { seen } = answer;
        done(seen && { ...seen, chart: { ...seen.chart, corners: scaled(seen.chart.corners, 1 / this.#scale) } });
      },
      // Nothing is said of it: the photo itself is looked over.
      failed: () => done(null),
    });
  }

  /** The corners are in pixels of the photo. */
  ask(question: ChartQuestion): void {
    this.#wanted = question;
    if (!this.#isOut) this.#next();
  }

  /** What is out may still be heard; nothing more is asked. */
  drop(): void {
    this.#wanted = null;
  }

  /** Nothing more is heard. */
  stop(): void {
    this.drop();
    this.#client.stop();
    this.#isOut = false;
  }

  close(): void {
    this.#client.close();
  }

  #next(): void {
    const question = this.#wanted;
    this.#wanted = null;
    this.#isOut = question !== null;
    if (!question) return;
    this.#client.ask(
      this.#small,
      { ...question, corners: scaled(question.corners, this.#scale) },
      {
        answer: (answer) => {
          if ('straight' in answer) this.heard(answer);
          this.#next();
        },
        // The exact answer says why.
        failed: () => this.#next(),
      },
    );
  }
}

function scaled(corners: Corners, by: number): Corners {
  return corners.map(({ x, y }) => ({ x: x * by, y: y * by })) as unknown as Corners;
}
