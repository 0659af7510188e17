/** Space held anywhere but on a control turns a drag into a pan; let go without one, it uses the tool. */
export class SpaceKey {
  isDown = $state(false);
  #hasPanned = false;

  /** `gridId` is the id of the element that draws with Space. */
  constructor(private readonly gridId: string) {}

  /** A key went down or up anywhere in the window. */
  readonly follow = (event: KeyboardEvent): void => {
    if (event.key !== ' ') return;
    const isOurs = event.target === document.body || (event.target as HTMLElement | null)?.id === this.gridId;
    if (event.type === 'keydown' && isOurs && !event.repeat) {
      this.isDown = true;
      this.#hasPanned = false;
    } else if (event.type === 'keyup') {
      this.isDown = false;
    }
  };

  /** The window lost the keyboard; the key may come up elsewhere. */
  readonly forget = (): void => {
    this.isDown = false;
  };

  /** True if a press of the pointer is to pan; the key then uses no tool. */
  takesPress(): boolean {
    this.#hasPanned ||= this.isDown;
    return this.isDown;
  }

  /** True if the key that came up was held for nothing else than to use the tool. */
  usesTool(event: KeyboardEvent): boolean {
    return event.key === ' ' && !this.#hasPanned;
  }
}
