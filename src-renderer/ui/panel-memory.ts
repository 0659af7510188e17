/**
 * What the panel of a bench keeps while the bench is away: whether it is folded,
 * which of its parts are open, and how far it was scrolled.
 */
import { liveFields, type LiveFields, type MakeLive } from './live.ts';

export class PanelMemory {
  readonly #shown: LiveFields<{ isFolded: boolean; isOpen: boolean }>;
  readonly #parts = new Map<string, boolean>();
  readonly #scrolled = new Map<string, number>();

  constructor(makeLive: MakeLive) {
    this.#shown = liveFields({ isFolded: false, isOpen: false }, makeLive);
  }

  /** Beside the work it is folded away for more of the work. */
  get isFolded(): boolean {
    return this.#shown.now.isFolded;
  }

  set isFolded(isFolded: boolean) {
    this.#shown.set({ isFolded });
  }

  /** In a narrow window it is folded away until it is asked for. */
  get isOpen(): boolean {
    return this.#shown.now.isOpen;
  }

  set isOpen(isOpen: boolean) {
    this.#shown.set({ isOpen });
  }

  /** Brings it up, however wide the window is. */
  show(): void {
    this.#shown.set({ isFolded: false, isOpen: true });
  }

  /** Whether a part was open; undefined for one that was never there. */
  isPartOpen(name: string): boolean | undefined {
    return this.#parts.get(name);
  }

  keepPart(name: string, isOpen: boolean): void {
    this.#parts.set(name, isOpen);
  }

  /** How far it was scrolled, in pixels, while `what` was looked at; null if that never was. */
  scrolledIn(what: string): number | null {
    return this.#scrolled.get(what) ?? null;
  }

  keepScroll(what: string, top: number): void {
    this.#scrolled.set(what, top);
  }
}
