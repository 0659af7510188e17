/** What kept a file, a folder or the program behind the window from answering. */
import type { ClosedPath, LimitedWork, RequestFault } from '../../../host/index.ts';
import { faultSaid } from '../faults.ts';
import { numbers as n } from '../numbers.ts';
import type { ProblemWords } from './problem-words.ts';

const stopped: Readonly<Record<LimitedWork, { what: string; mend: string }>> = {
  picture: {
    what: 'Reading the picture was stopped',
    mend: 'Crop it to the chart, or save it smaller: 20 pixels for each cell are plenty.',
  },
  export: {
    what: 'Making the files was stopped',
    mend: 'Export one kind at a time, or less of the piece.',
  },
};

const closed: { readonly [W in ClosedPath]: { readonly what: string; readonly mend: string } } = {
  hidden: {
    what: 'Hidden files and folders stay closed to this program.',
    mend: 'Choose a folder that is not hidden, and a name that does not begin with a dot.',
  },
  'own-data': { what: 'This is where the program keeps its own data.', mend: 'Choose another folder.' },
  'not-chosen': {
    what: 'This was not chosen in a dialog, so it stays closed to this program.',
    mend: 'Choose it with Open… or Save as….',
  },
  outside: { what: 'This link leads out of the folder of the collection.', mend: 'Put a copy of the file there.' },
  ending: {
    what: 'The program writes no files with such an ending.',
    mend: 'Use a name that ends in .walewright.',
  },
};

function requestFault(wrong: RequestFault): string {
  if (wrong === 'unknown') return 'there is no such request';
  if (wrong === 'not-json') return 'it is not JSON';
  return `${wrong.path.join('.') || 'all of it'}: ${faultSaid(wrong.fault)}`;
}

export const files = {
  'file-missing': () => ({ what: 'There is no such file or folder.', mend: 'Check the name and the folder.' }),
  'file-is-folder': () => ({ what: 'This is a folder, not a file.', mend: 'Choose a file in it.' }),
  'file-too-large': ({ bytes, most }) => ({
    what: `The file has ${n.plain(bytes / 1e6)} MB; at most ${n.plain(most / 1e6)} MB are read.`,
    mend: 'Choose a smaller one.',
  }),
  'file-not-readable': ({ detail }) => ({
    what: `The file cannot be read (${detail}).`,
    mend: 'Check that you may read it.',
  }),
  'file-changed-elsewhere': () => ({
    what: 'Another program has changed the file since it was opened here.',
    mend: 'Save under another name, or open the file again.',
  }),
  'file-exists': () => ({
    what: 'A file of that name is there already. It is as it was before.',
    mend: 'Save once more and say whether to replace it, or use another name.',
  }),
  'file-of-other-kind': () => ({
    what: 'What has that name is a file of another kind, and is never replaced.',
    mend: 'Use another name.',
  }),
  'file-busy': () => ({
    what: 'Another Walewright is writing this file just now.',
    mend: 'Try again in a moment.',
  }),
  'file-name-unusable': ({ text }) => ({
    what: text.trim() === '' ? 'The file has no name yet.' : `"${text}" cannot be the name of a file.`,
    mend: 'Give it a name, such as sleeve.',
  }),
  'path-closed': ({ why }) => closed[why],
  'files-not-from-here': ({ names }) => ({
    what: `Nothing was written: ${n.list(names)} ${names.length === 1 ? 'is' : 'are'} there already, and this command did not write ${names.length === 1 ? 'it' : 'them'} from the same source, or somebody has changed ${names.length === 1 ? 'it' : 'them'} since.`,
    mend: `Add --replace to replace ${names.length === 1 ? 'it' : 'them'}, or write somewhere else.`,
  }),
  'files-there': ({ names }) => ({
    what: `Nothing was written: ${n.list(names)} ${names.length === 1 ? 'is' : 'are'} there already.`,
    mend: `Add --replace to replace ${names.length === 1 ? 'it' : 'them'}, or write somewhere else.`,
  }),
  'folder-not-writable': ({ detail }) => ({
    what: `The folder cannot be written to (${detail}). Nothing was changed.`,
    mend: 'Choose another folder.',
  }),
  'disk-full': () => ({
    what: 'The disk is full. The file is as it was before.',
    mend: 'Make room, or save somewhere else; your work is still here.',
  }),
  'file-not-written': ({ detail }) => ({
    what: `The file could not be written (${detail}). It is as it was before.`,
    mend: 'Try again, or save somewhere else.',
  }),
  'not-printed': ({ detail }) => ({
    what: `The sheet could not be printed (${detail}).`,
    mend: 'Check the printer and try again, or export the sheet as a PDF and print that.',
  }),
  'request-invalid': ({ method, wrong }) => ({
    what: `The request "${method}" was not understood (${requestFault(wrong)}).`,
    mend: 'Reload the window; if it comes again, report it.',
  }),
  'request-refused': ({ detail }) => ({
    what: `The request was refused (${detail}).`,
    mend: 'Press Enter where the program was started, and open the address that it prints.',
  }),
  'host-busy': () => ({
    what: 'The program has too much to do at once, and this was not begun.',
    mend: 'Try again in a moment; your work is still here.',
  }),
  'kept-work-unreadable': () => ({
    what: 'This kept work is damaged, or a newer Walewright kept it.',
    mend: 'It stays where it is: open it with the newer program, or delete it if you do not need it.',
  }),
  'host-unreachable': () => ({
    what: 'The program behind this window does not answer.',
    mend: 'Start it again; do not close this window before your work is saved.',
  }),
  'work-stopped': ({ work, limit, amount }) => ({
    what: `${stopped[work].what}: it took more than ${
      limit === 'time' ? n.count(amount, 'second') : `${n.plain(amount, 0)} MB of memory`
    }.`,
    mend: stopped[work].mend,
  }),
  unexpected: ({ detail }) => ({
    what: `Something went wrong inside the program (${detail}).`,
    mend: 'Your work is unchanged. Please report it with what you did.',
  }),
} satisfies Partial<ProblemWords>;
