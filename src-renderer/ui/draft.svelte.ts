/** What is being typed into a field. What a field shows is that, or the value as it stands. */

/** The text of a field while it is typed, and the mark of the visit, whose changes make one undo entry. */
export class Draft {
  /** Null: nothing is typed, the field shows its value. */
  text = $state<string | null>(null);
  gesture = $state('');
  #visits = 0;
  readonly #id: string;

  /** `id` is unique to the field. */
  constructor(id: string) {
    this.#id = id;
  }

  begin(): void {
    this.gesture = `${this.#id}-${this.#visits++}`;
  }

  /** Shows the value again. */
  leave(): void {
    this.text = null;
  }
}
