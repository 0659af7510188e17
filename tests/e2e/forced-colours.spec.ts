/** Where the platform forces its colours, what is on is told by its shape. */
import type { Locator } from '@playwright/test';
import { expect, expectAccessible, test } from './app.ts';
import { knitTo, toKnit } from './knit-bench.ts';

test.use({ forcedColors: 'active' });

/** The shape of the edges of an element, and of the knob in it: nothing that a colour alone could tell. */
async function shape(element: Locator): Promise<string> {
  return element.evaluate((node) => {
    const all = getComputedStyle(node);
    const knob = getComputedStyle(node, '::before');
    const sides = ['top', 'right', 'bottom', 'left'];
    const edges = sides.map(
      (side) => all.getPropertyValue(`border-${side}-width`) + all.getPropertyValue(`border-${side}-style`),
    );
    return [...edges, all.textDecorationLine, knob.borderRadius, knob.transform].join(' ');
  });
}

test('tells switches, tools, yarns, benches and commands, light and dark', async ({ page, start }) => {
  await start();
  for (const colorScheme of ['light', 'dark'] as const) {
    await test.step(colorScheme, async () => {
      await page.emulateMedia({ colorScheme, forcedColors: 'active' });
      // The drawing goes with what the platform forces.
      await expect(page.locator('html')).toHaveAttribute('data-theme', colorScheme);

      const toggle = page.getByRole('switch').first();
      const was = await shape(toggle);
      const isOn = await toggle.isChecked();
      await toggle.setChecked(!isOn);
      await expect.poll(() => shape(toggle)).not.toBe(was);

      const tool = (name: string): Locator => page.getByRole('button', { name, exact: true });
      expect(await shape(tool('Draw'))).not.toBe(await shape(tool('Erase')));
      expect(await shape(tool('Motif'))).not.toBe(await shape(tool('Piece')));
      const yarns = page.getByRole('radiogroup', { name: 'Drawing yarn' }).locator('.yarn');
      expect(await shape(yarns.nth(0))).not.toBe(await shape(yarns.nth(1)));
      // A swatch keeps the colour of its yarn.
      const swatch = (index: number): Promise<string> =>
        yarns
          .nth(index)
          .locator('.swatch')
          .evaluate((node) => getComputedStyle(node).backgroundColor);
      expect(await swatch(0)).toBe('rgb(93, 117, 145)');
      expect(await swatch(1)).toBe('rgb(251, 247, 234)');

      await page.keyboard.press('Control+K');
      const options = page.getByRole('dialog').getByRole('option');
      expect(await shape(options.nth(0))).not.toBe(await shape(options.nth(1)));
      await page.keyboard.press('Escape');
      await expect(page.getByRole('dialog')).toHaveCount(0);
    });
  }
});

test('tells the placing that is chosen', async ({ page, start }) => {
  await start();
  await page.getByRole('button', { name: 'Piece', exact: true }).click();
  const placings = page.getByRole('radiogroup').locator('label');
  await expect(placings.nth(1)).toBeVisible();
  expect(await shape(placings.nth(0))).not.toBe(await shape(placings.nth(1)));
  await expectAccessible(page);
});

test('tells what stands forward, what is wrapped and which way the carriage goes', async ({ page, start }) => {
  await start();
  await toKnit(page);
  await knitTo(page, 24);
  const bed = page.getByRole('img', { name: /^The bed/ });
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme, forcedColors: 'active' });
    const colours = await bed.evaluate((svg) => {
      const of = (selector: string, what: 'stroke' | 'fill'): string =>
        getComputedStyle(svg.querySelector(selector) as Element)[what];
      const behind = getComputedStyle(svg.closest('.bed') as Element).backgroundColor;
      return {
        behind,
        drawn: ['.working', '.forward', '.heads', '.loops', '.bracket'].map((one) => of(one, 'stroke')),
      };
    });
    // Lengths, heads and loops tell needles apart; each has to be seen on what is behind it.
    for (const drawn of colours.drawn) expect(drawn).not.toBe(colours.behind);
    const way = page.getByRole('img', { name: /^The carriage goes from/ }).locator('path');
    expect(await way.evaluate((path) => getComputedStyle(path).stroke)).not.toBe(colours.behind);
    expect(await shape(page.getByRole('button', { name: 'Knit', exact: true }))).not.toBe(
      await shape(page.getByRole('button', { name: 'Piece', exact: true })),
    );
  }
});
