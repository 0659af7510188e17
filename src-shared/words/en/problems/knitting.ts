/** What a knitter at the machine cannot have done, and what is wrong with the journal of a piece. */
import { numbers as n } from '../numbers.ts';
import type { ProblemWords } from './problem-words.ts';

export const knitting = {
  'reading-unknown': ({ text, last }) => ({
    what: `“${text}” is no reading of the row counter here: it goes from 0 to ${last}.`,
    mend: 'Write what the row counter reads, in digits.',
  }),
  'counted-elsewhere': ({ thought, reads }) => ({
    what: `The counter reads ${reads}, not ${thought}: it was counted in another window.`,
    mend: 'Look at the row counter of the machine, and go on from what it reads.',
  }),
  'rows-all-knitted': ({ last }) => ({
    what: `All ${n.rows(last)} are knitted.`,
    mend: 'Take the piece off the needles, or go back a row.',
  }),
  'no-row-knitted': () => ({ what: 'No row is knitted yet.', mend: 'Cast on, and knit the first row.' }),
  'not-ripped-back': ({ to, reading }) => ({
    what: `The counter reads ${reading}, so nothing is ripped back to ${to}.`,
    mend: `Give a reading below ${reading}, or go to that reading instead.`,
  }),
  'not-at-end': ({ reading, last }) => ({
    what: `The counter reads ${reading}, and the piece comes off at ${last}.`,
    mend: 'Knit to the end first.',
  }),
  'piece-finished': () => ({
    what: 'This piece is off the needles.',
    mend: 'Go back a step if it is not, or begin the next one.',
  }),
  'act-unknown': ({ reading, act }) => ({
    what: `At reading ${reading} there is no step ${act + 1}.`,
    mend: 'Open the piece again.',
  }),
  'carriage-not-seen': ({ reading }) => ({
    what: `Before row ${reading + 1} it is not said yet where the carriage stands.`,
    mend: 'Look at the machine, and say at which side it is.',
  }),
  'carriage-elsewhere': ({ reading, seen, expected }) => ({
    what: `The carriage stands at the ${seen}; when the counter reads ${reading} it stands at the ${expected}.`,
    mend: 'A row more or less is knitted than was counted. Count the rows on the fabric, and go to that reading.',
  }),
  'order-too-short': ({ reading, last }) => ({
    what: `${n.rows(reading)} are knitted, and the piece has ${last} now.`,
    mend: `Go on as the piece was begun, or rip back to ${last} or below.`,
  }),
  'order-unreadable': () => ({
    what: 'What this piece was begun with cannot be read.',
    mend: 'Begin the piece again from the project, and go to the reading of your row counter.',
  }),
  'journal-missing': () => ({
    what: 'There is no journal of this piece any more.',
    mend: 'Begin the piece again, and go to the reading of your row counter.',
  }),
  'journal-not-ours': () => ({
    what: 'This is no journal of a piece on the needles.',
    mend: 'Begin the piece again, and go to the reading of your row counter.',
  }),
  'journal-newer': ({ version, known }) => ({
    what: `This piece was counted by a newer Walewright (journal version ${version}; this one knows ${known}).`,
    mend: 'Go on with the newer program. Nothing was changed.',
  }),
  'journal-damaged': ({ line }) => ({
    what: `The journal of this piece is damaged from line ${line} on.`,
    mend: 'Begin the piece again, and go to the reading of your row counter. The old journal is put aside.',
  }),
} satisfies Partial<ProblemWords>;
