/** Whether the keyboard's cursor shows on a chart: while the chart has the keyboard, and the keys moved last. */
export class CursorFocus {
  #isFocused = $state(false);
  #usesKeys = $state(false);

  get isShown(): boolean {
    return this.#isFocused && this.#usesKeys;
  }

  /** The chart has the keyboard, by a key or by a press. */
  focus(byKey: boolean): void {
    this.#isFocused = true;
    this.#usesKeys = byKey;
  }

  blur(): void {
    this.#isFocused = false;
  }

  /** The keys move. */
  useKeys(): void {
    this.#usesKeys = true;
  }

  /** The pointer moves. */
  usePointer(): void {
    this.#usesKeys = false;
  }
}
