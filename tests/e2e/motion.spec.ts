/** Colours and places that move from one state to the next, where the platform lets them. */
import { expect, expectAccessible, test } from './app.ts';
import { appearAs, motionEnds } from './at-rest.ts';

/** Counts the transitions that start from now on. */
const countTransitions = (): void => {
  Object.assign(window, { transitions: 0 });
  document.addEventListener('transitionrun', () => (window as unknown as { transitions: number }).transitions++);
};
const transitions = (): number => (window as unknown as { transitions: number }).transitions;

test.describe('with motion', () => {
  test.use({ contextOptions: { reducedMotion: 'no-preference' } });

  test('can be read wherever colours come to rest, in light and in dark', async ({ page, start }) => {
    await start();
    await page.evaluate(countTransitions);
    await page.keyboard.press('2');
    for (const scheme of ['light', 'dark'] as const) {
      await appearAs(page, scheme);
      await page.getByRole('button', { name: 'Show floats' }).click();
      await page.getByRole('button', { name: 'Show wraps' }).hover();
      await motionEnds(page);
      await expectAccessible(page);
    }
    expect(await page.evaluate(transitions)).toBeGreaterThan(0);
  });
});

test('has no motion where the platform asks for none', async ({ page, start }) => {
  await start();
  await page.evaluate(countTransitions);
  await page.keyboard.press('2');
  await page.getByRole('button', { name: 'Show floats' }).click();
  await page.getByRole('button', { name: 'Size, gauge, edges' }).click();
  await appearAs(page, 'dark');
  await motionEnds(page);
  expect(await page.evaluate(transitions)).toBe(0);
});
