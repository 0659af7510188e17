/**
 * Somebody who has never seen the program, and has only the screen: finds
 * everything by what is written there, with the mouse and by typing into
 * fields. Every press, drag, choice and typed value is an action, and counted.
 */
import type { Locator, Page } from '@playwright/test';
import { expect } from './app.ts';
import { Chart } from './chart.ts';

type Place = Page | Locator;

export class Newcomer {
  actions = 0;

  constructor(readonly page: Page) {}

  /** Presses the button that is called so. */
  async press(name: string | RegExp, place: Place = this.page): Promise<void> {
    await this.act(place.getByRole('button', { name, exact: typeof name === 'string' }), (button) => button.click());
  }

  /** Types a value, and goes on to the next field. */
  async type(label: string | RegExp, value: string | number, place: Place = this.page): Promise<void> {
    await this.act(place.getByLabel(label, { exact: typeof label === 'string' }), async (field) => {
      await field.fill(String(value));
      await field.blur();
    });
  }

  /** Chooses from a list. */
  async choose(label: string, what: string, place: Place = this.page): Promise<void> {
    await this.act(place.getByLabel(label, { exact: true }), (field) => field.selectOption({ label: what }));
  }

  /** Draws with one drag, from one cell to another; stitches and rows count from 1. */
  async drag(from: readonly [stitch: number, row: number], to: readonly [stitch: number, row: number]): Promise<void> {
    const chart = new Chart(this.page);
    const [start, end] = [await chart.at(...from), await chart.at(...to)];
    await this.page.mouse.move(start.x, start.y);
    await this.page.mouse.down();
    await this.page.mouse.move(end.x, end.y, { steps: 10 });
    await this.page.mouse.up();
    this.actions++;
  }

  /** What a newcomer acts on is seen, as it stands or once the panel is scrolled. */
  private async act(place: Locator, deed: (place: Locator) => Promise<unknown>): Promise<void> {
    await expect(place).toBeVisible();
    await deed(place);
    this.actions++;
  }
}
