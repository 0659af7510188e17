/** Sizes of type, corners and controls come from one place (src-renderer/ui/tokens.css), so that they stay one scale. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';

const source = resolve(import.meta.dirname, '../../src-renderer');
const styled = readdirSync(source, { recursive: true, encoding: 'utf8' })
  .filter((path) => /\.(svelte|css)$/.test(path) && !path.endsWith('tokens.css'))
  .map((path) => ({ path, text: readFileSync(join(source, path), 'utf8') }));

/** Each place where a style has a length of its own, as "file: declaration". */
const withLengths = (property: string, isMeant: (value: string) => boolean): string[] =>
  styled.flatMap(({ path, text }) =>
    [...text.matchAll(new RegExp(`[^-\\w]${property}: ([^;]*\\d(?:px|rem|em)[^;]*);`, 'g'))]
      .filter(([, value = '']) => !isMeant(value))
      .map(([declaration]) => `${path}: ${declaration.trim()}`),
  );

describe('the look', () => {
  it('has one scale of type', () => {
    expect(styled.length).toBeGreaterThan(50);
    // The text of a printed page is found in its preview, and not seen there.
    expect(withLengths('font(?:-size)?', (value) => value === '1px')).toEqual([]);
  });

  it('has one set of corners', () => {
    // Inside a border a corner is as much tighter as the border is wide.
    expect(withLengths('border-radius', (value) => value === 'calc(var(--corner) - 1px)')).toEqual([]);
  });

  it('has one height of controls, one of lines in a list, and one that can just be hit', () => {
    const own = withLengths('min-height', () => false).filter((line) => /: (24|28|32)px/.test(line));
    expect(own).toEqual([]);
  });
});
