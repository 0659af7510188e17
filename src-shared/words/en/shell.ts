/** The window: benches, commands, files, messages. */
export const shell = {
  program: 'Walewright',
  untitled: 'Untitled',
  untitledMotif: 'motif',
  saved: 'saved',
  unsaved: 'not saved',
  notInFile: 'not in a file yet',
  benches: { motif: 'Motif', piece: 'Piece', sheet: 'Sheet', knit: 'Knit' },
  benchesLabel: 'Benches',
  noticeLabel: 'Notice',
  statusLabel: 'Where you are, and what was done',
  /** Where the keyboard's cursor is, beside what the pointer is on. */
  atCursor: (what: string): string => `Cursor: ${what}`,
  toolsLabel: 'Tools',
  meaningLabel: 'What it means',
  close: 'Close',
  cancel: 'Cancel',
  /** The list of commands, and what a command says that has run; what they are called is in commands.ts. */
  commands: {
    lengthUnitAnnounced: { cm: 'Sizes are in centimetres.', in: 'Sizes are in inches.' },
    singleKeysHint: 'They act while the chart, the piece or the pages have the keyboard.',
    /** A switch was turned by its shortcut. */
    switched: (label: string, isOn: boolean): string => `${label}: ${isOn ? 'on' : 'off'}`,
    find: 'Find a command',
    none: 'No command is known by that name.',
    count: (n: number): string => `${n} ${n === 1 ? 'command' : 'commands'}`,
  },
  /** A part of the program that could not be loaded. */
  part: {
    names: {
      piece: 'The Piece bench',
      sheet: 'The Sheet bench',
      knit: 'The Knit bench',
      readingIn: 'Reading a picture in',
      newProject: 'The dialog for a new project',
      filePanel: 'The panel for files',
      tour: 'The tour',
      lettering: 'Lettering',
      collection: 'The collection',
      doubts: 'The list of cells to settle',
      yarn: 'What changes a yarn',
      sizes: 'The table of sizes',
      colourways: 'Colourways',
      colourOrder: 'The order of colours',
      findings: 'What was found',
      closed: 'The seamed piece',
      purlSide: 'The purl side',
      feeders: 'Which yarn is where',
      seam: 'The view round the seam',
      allOver: 'The form for all-over patterns',
      garmentYarn: 'The yarn for all pieces',
    },
    loading: (name: string): string => `${name}: loading…`,
    missing: (name: string): string => `${name} could not be loaded.`,
    nothingLost: 'Your work is not touched by it.',
    away: (name: string): string =>
      `${name} cannot be loaded while the program behind this window is away. It comes by itself when the program is there again.`,
    failsAgain: 'Save your work, then close the program and start it again.',
    again: 'Try again',
  },
  projectName: { label: 'Name of the project' },
  file: 'File',
  recentHeading: 'Recent projects',
  noRecent: 'None yet.',
  opened: (name: string): string => `${name} opened.`,
  savedAs: (name: string): string => `Saved as ${name}.`,
  /** Work that was kept aside; `when` comes from {@link shell.kept.when}. */
  kept: {
    recovered: (name: string, when: string): string =>
      `"${name}" was not saved when the program ended. This is the work as it was ${when}; save it.`,
    offered: (name: string, when: string): string => `"${name}" as it was ${when} was kept and is not saved yet.`,
    more: (count: number): string => `${count} more ${count === 1 ? 'is' : 'are'} kept.`,
    open: 'Open kept work',
    later: 'Later',
    label: 'Kept work',
    taken: 'Another window has opened this work.',
    when: (at: Date, now: Date): string => {
      const time = at.toLocaleTimeString('en-GB', { hour: '2-digit', minute: '2-digit' });
      if (at.toDateString() === now.toDateString()) return `today at ${time}`;
      return `on ${at.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })} at ${time}`;
    },
  },
  /** The program behind the window has ended. */
  lost: {
    label: 'Program ended',
    text: 'The program behind this window has ended. You can draw on: your work is kept in this browser, and the window joins again by itself when the program is started.',
    joined: 'The program is there again.',
    copySaved: (name: string): string => `${name} goes to your downloads.`,
  },
  /** On the clipboard for other programs. */
  cellsCopied: 'Cells copied in Walewright',
  picturePasted: 'The picture on the clipboard is read in: what was copied last comes first.',
  /** What a picture is called that has no file: `clipboard.png`. */
  pastedName: (name: string): string => `clipboard${/\.[^.]+$/.exec(name)?.[0] ?? ''}`,
  /** In place of the window, for a page that its host has not let in. */
  outside: {
    title: 'This page is not connected to Walewright',
    why: {
      'no-key': 'Its address does not let it in.',
      'key-refused': 'Its address has been used before, or is too old: each opens one window, once.',
      nobody: 'The program does not answer at this address; it may have ended.',
    },
    mend: 'Press Enter in the terminal where Walewright was started, and open the address that it prints. If Walewright has ended, start it again.',
  },
  dropHere: 'Drop a project or a picture to open it',
  unsavedDialog: {
    title: (name: string): string => `Save "${name}" first?`,
    text: 'It has unsaved changes.',
    save: 'Save',
    drop: 'Leave without saving',
    stay: 'Stay here',
  },
  replaceDialog: {
    title: (names: readonly string[]): string =>
      names.length === 1 ? `Replace "${names[0]}"?` : `Replace ${names.length} files?`,
    text: (files: number, folder: string): string =>
      files === 1 ? `It is there already, in ${folder}` : `They are there already, in ${folder}`,
    numbered: (files: number): string =>
      files === 1
        ? 'Keep both puts a number behind the name of the new one.'
        : 'Keep both puts a number behind the names of the new ones.',
    keep: 'Keep what is there',
    cancel: 'Cancel',
    keepBoth: 'Keep both',
    replace: (files: number): string => (files === 1 ? 'Replace' : 'Replace all'),
  },
};

/** Forms: what a field takes. */
export const forms = {
  wrongNumber: (least: number, most: number, isWhole: boolean): string =>
    `${isWhole ? 'A whole number' : 'A number'} from ${least} to ${most}.`,
  wrongName: (most: number): string => `A name of 1 to ${most} letters.`,
};

/** A window whose page has ended or does not answer. */
export const windowTrouble = {
  ended: {
    title: 'The window stopped working.',
    detail: (isMemory: boolean): string =>
      `${isMemory ? 'It ran out of memory. ' : ''}Loaded again, it offers the work that was kept: all but the last second or so.`,
    reload: 'Load it again',
    close: 'Close the program',
  },
  hanging: {
    title: 'The window does not answer.',
    detail:
      'It may be busy and come back. Closed now, unsaved work was kept, all but the last second or so, and is offered at the next start.',
    wait: 'Wait',
    close: 'Close it',
  },
};
