/** What is given at the start, and where windows can open. */
import { describe, expect, it } from 'vitest';
import { problemOf } from '@shared/problem/index.ts';
import { type BrowserReason } from '@shared/words/index.ts';
import { terminalWords } from '@shared/words/terminal.ts';
import { startArguments } from '../../../src-main/launcher/arguments.ts';
import {
  defaultBrowserCommand,
  findChromium,
  openAppWindow,
  sizeFlag,
} from '../../../src-main/launcher/browser-window.ts';
import { hasDisplay, sandboxFlags } from '../../../src-main/launcher/display.ts';

describe('what is given at the start', () => {
  it.each([
    [[], { shell: null, file: null, wantsHelp: false }],
    [['--shell', 'browser'], { shell: 'browser', file: null, wantsHelp: false }],
    [['--shell=electron', 'sleeve.walewright'], { shell: 'electron', file: 'sleeve.walewright', wantsHelp: false }],
    [['--', '--odd-name.walewright'], { shell: null, file: '--odd-name.walewright', wantsHelp: false }],
    [['-h'], { shell: null, file: null, wantsHelp: true }],
  ])('%j is understood', (given, understood) => {
    expect(startArguments(given)).toEqual(understood);
  });

  it.each([
    [['--shell', 'teapot'], { code: 'option-value', facts: { option: '--shell', text: 'teapot' } }],
    [['--shell'], { code: 'option-empty', facts: { option: '--shell' } }],
    [['--shel', 'browser'], { code: 'option-unknown', facts: { option: '--shel' } }],
    [['-x'], { code: 'option-unknown', facts: { option: '-x' } }],
    [['a', 'b'], { code: 'argument-unexpected', facts: { text: 'b' } }],
  ])('%j is refused by name', (given, problem) => {
    let thrown: unknown;
    try {
      startArguments(given);
    } catch (error) {
      thrown = error;
    }
    expect(problemOf(thrown)).toMatchObject(problem);
  });
});

describe('a display', () => {
  it.each([
    ['linux', {}, false],
    ['linux', { DISPLAY: '' }, false],
    ['linux', { DISPLAY: ':0' }, true],
    ['linux', { WAYLAND_DISPLAY: 'wayland-0' }, true],
    ['freebsd', {}, false],
    ['darwin', {}, true],
    ['win32', {}, true],
  ] as const)('on %s with %j: %s', (platform, variables, answer) => {
    expect(hasDisplay(variables, platform)).toBe(answer);
  });
});

describe('the sandbox', () => {
  it.each([
    ['linux', 0, ['--no-sandbox']],
    ['linux', 1000, []],
    ['darwin', 0, []],
    ['win32', null, []],
  ] as const)('is left out on %s for user %s: %j', (platform, user, flags) => {
    expect(sandboxFlags(platform, user)).toEqual(flags);
  });
});

describe('the browser', () => {
  it('is the first Chromium on the path', () => {
    const there = new Set(['/opt/bin/google-chrome', '/usr/bin/chromium']);
    const variables = { PATH: '/opt/bin:/usr/bin' };
    expect(findChromium(variables, 'linux', (path) => there.has(path))).toBe('/usr/bin/chromium');
    expect(findChromium(variables, 'linux', () => false)).toBeNull();
    expect(findChromium({}, 'linux', () => true)).toBeNull();
  });

  it('opens its window as large as it was left', () => {
    expect(sizeFlag({ width: 1600, height: 950 })).toBe('--window-size=1600,950');
  });

  it('is not opened when the program has ended meanwhile', async () => {
    // Would end well at once, whatever it is given.
    const window = openAppWindow('true', 'file:///a.html', '/profile', [], AbortSignal.abort());
    expect(await window).toBe(false);
  });

  it('is looked for where Windows keeps programs', () => {
    const variables = { 'PROGRAMFILES(X86)': 'C:\\Program Files (x86)' };
    const edge = 'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe';
    expect(findChromium(variables, 'win32', (path) => path === edge)).toBe(edge);
  });

  it.each([
    ['linux', 'xdg-open'],
    ['darwin', 'open'],
    ['win32', 'rundll32'],
  ] as const)('of the person is asked for on %s by %s, the address being one argument', (platform, command) => {
    const whole = defaultBrowserCommand(platform, 'http://127.0.0.1:1/?key=a&b');
    expect([whole[0], whole.at(-1)]).toEqual([command, 'http://127.0.0.1:1/?key=a&b']);
  });
});

describe('why it is the browser', () => {
  const reasons: readonly BrowserReason[] = [
    { kind: 'asked' },
    { kind: 'no-display' },
    { kind: 'not-installed' },
    { kind: 'fetch-failed', detail: 'fetch failed' },
    { kind: 'fetch-failed-before', note: '/data/note' },
    { kind: 'electron-ended', detail: 'it was ended by SIGTRAP' },
  ];
  it.each(reasons)('is said in one line: $kind', (reason) => {
    expect(terminalWords.launcher.why(reason)).toMatch(/^[^\n]{20,140}\.$/);
  });
});
