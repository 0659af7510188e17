/** The four corners clicked one after another, and what is heard of it. */
import type { Corners, Point } from '@shared/reading/index.ts';
import { pictureWords } from '@shared/words/pictures.ts';

export class CornerClicks {
  /** Those that were clicked so far; null while nobody clicks them one after another. */
  corners = $state.raw<readonly Point[] | null>(null);

  constructor(
    private readonly place: (corners: Corners) => void,
    private readonly announce: (said: string) => void,
  ) {}

  click(at: Point): void {
    const { chart: text } = pictureWords.readingIn;
    const clicked = [...(this.corners ?? []), at];
    const [first, second, third, fourth] = clicked;
    if (first && second && third && fourth) {
      this.corners = null;
      this.place([first, second, third, fourth] satisfies Corners);
      this.announce(text.clicked);
    } else {
      this.corners = clicked;
      this.announce(text.clickNext(clicked.length));
    }
  }

  /** Begins, or leaves the corners as they were. */
  toggle(): void {
    const { chart: text } = pictureWords.readingIn;
    this.corners = this.corners ? null : [];
    this.announce(this.corners ? text.clickNext(0) : text.clickLeft);
  }
}
