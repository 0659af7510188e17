/** What is wrong with what was typed: options, arguments, numbers. */
import { numbers as n } from '../numbers.ts';
import type { ProblemWords } from './problem-words.ts';

export const calls = {
  'not-a-whole-number': ({ text, least, most }) => ({
    what: `"${text}" is not a whole number from ${least} to ${most}.`,
    mend: 'Write digits only.',
  }),
  'not-a-number': ({ text }) => ({
    what: `"${text}" is not a number above 0.`,
    mend: 'Write digits, with a point if need be.',
  }),
  'not-a-date': ({ text }) => ({
    what: `"${text}" is not a date that there is.`,
    mend: 'Write year, month and day, such as 2026-11-26.',
  }),
  'epoch-unusable': ({ text, most }) => ({
    what: `"${text}" is not a count of seconds since 1970, from 0 to ${most}.`,
    mend: 'Set it to a whole number, unset it, or give --date.',
  }),
  'option-unknown': ({ option }) => ({
    what: `${option} is no option here.`,
    mend: 'See --help for those there are.',
  }),
  'option-value': ({ option, text, allowed }) => ({
    what: `"${text}" is not a value of ${option}.`,
    mend: `Write ${allowed}.`,
  }),
  'option-missing': ({ option }) => ({ what: `${option} is missing.`, mend: 'Add it; --help shows how.' }),
  'options-exclude': ({ options }) => ({
    what: `${n.list(options)} cannot go together.`,
    mend: 'Leave one of them out.',
  }),
  'option-empty': ({ option }) => ({
    what: `${option} is given without a value.`,
    mend: 'Write the value after it; --help shows which.',
  }),
  'switch-value': ({ option, text }) => ({
    what: `${option} takes no value, and "${text}" was given.`,
    mend: 'Leave the value out.',
  }),
  'argument-missing': ({ argument }) => ({ what: `${argument} is missing.`, mend: 'Name it; --help shows how.' }),
  'argument-unexpected': ({ text }) => ({
    what: `Unexpected: "${text}".`,
    mend: 'Put names with spaces in quotation marks; --help shows what goes where.',
  }),
  'command-unknown': ({ text }) => ({
    what: `There is no command "${text}".`,
    mend: 'See --help for those there are.',
  }),
  'choice-unknown': ({ given, choices }) => ({
    what: `There is no choice ${given}: ${choices === 1 ? 'there is one' : `there are ${choices}`}.`,
    mend: `Give a number from 1 to ${choices}.`,
  }),
  'colour-unknown': ({ text, known }) => ({
    what: `"${text}" is none of the colours here.`,
    mend: `Write one of ${known}.`,
  }),
} satisfies Partial<ProblemWords>;
