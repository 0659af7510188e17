/** What the program says in the terminal while it starts. */

/** Why the program opens in a browser. */
export type BrowserReason =
  | { readonly kind: 'asked' }
  | { readonly kind: 'no-display' }
  | { readonly kind: 'not-installed' }
  | { readonly kind: 'fetch-failed'; readonly detail: string }
  | { readonly kind: 'fetch-failed-before'; readonly note: string }
  | { readonly kind: 'electron-ended'; readonly detail: string };

function why(reason: BrowserReason): string {
  switch (reason.kind) {
    case 'asked':
      return 'Walewright runs in the browser, as asked.';
    case 'no-display':
      return 'There is no display here for a window of its own, so Walewright serves a browser.';
    case 'not-installed':
      return 'Electron is not installed here, so Walewright runs in the browser.';
    case 'fetch-failed':
      return `Electron could not be fetched (${reason.detail}), so Walewright runs in the browser.`;
    case 'fetch-failed-before':
      return `Electron could not be fetched before, so Walewright runs in the browser (delete ${reason.note} to try again).`;
    case 'electron-ended':
      return `Electron did not start (${reason.detail}), so Walewright runs in the browser.`;
  }
}

export const launcher = {
  usage: [
    'Usage: npm start -- [--shell electron|browser] [FILE]',
    '',
    'Opens FILE, a project or a picture of a motif, or what was last at work.',
    '',
    '  --shell electron   open a window of its own, or say why it cannot be',
    '  --shell browser    serve a browser',
    '  --help             print this',
  ].join('\n'),
  why,
  fetching: (version: string): string => `Fetching Electron ${version}, once …`,
  fetched: (megabytes: number): string => `  ${megabytes} MB`,
  saidNothing: 'its installer did not say why',
  silent: (seconds: number): string => `no answer for ${seconds} s`,
  noElectron: (reason: BrowserReason): string =>
    reason.kind === 'fetch-failed'
      ? `Electron could not be fetched (${reason.detail}). Start with --shell browser.`
      : reason.kind === 'no-display'
        ? 'Electron needs a display, and there is none here. Start with --shell browser.'
        : 'Electron is not installed here. Start with --shell browser.',
  exitCode: (code: number): string => `it ended with ${code}`,
  endedBy: (signal: string): string => `it was ended by ${signal}`,
  address: (address: string): string => `Walewright is at ${address}`,
  howToEnd: 'That address opens once. Enter prints another, Ctrl-C ends the program.',
  openThere: 'Open that address in a browser on this machine.',
  usedTwice:
    'An address was used a second time. If that was not you, somebody else has seen it: end the program with Ctrl-C and start it again.',
  windowClosed: 'The window was closed.',
  notBuilt: (folder: string): string => `There is no built page in ${folder}. Run: npm run build`,
};
