/** Why groups go where they go, and what whole needles cost. */
import {
  judgeRound,
  seenRound,
  type PlacementChoice,
  type Reason,
  type RoundJudgement,
  type Spaces,
} from '../../placement/index.ts';
import type { Band, PlacementRule, SolvedRule } from '../../pattern/index.ts';
import { numbers as n } from './numbers.ts';

/** A rule in words. */
interface RuleWords {
  /** Its name, for forms. */
  readonly name: string;
  /** What it asks, in a sentence. */
  readonly asks: string;
  /** The best choice where both sides are alike; `how`: `to the eye`, `isMet`: all that the rule asks is there. */
  best(how: string, isMet: boolean): string;
  /** The spaces that are to be alike, and are not in a later choice. */
  readonly spaces: string;
}

const solved: { readonly [Kind in SolvedRule['kind']]: RuleWords } = {
  seam: {
    name: 'Seam continues',
    asks: 'Each margin is half a gap, so that the pattern runs on across the seam.',
    best: (how, isMet) => (isMet ? `Even ${how}` : 'Both sides alike'),
    spaces: 'gaps and seam',
  },
  even: {
    name: 'Even spaces',
    asks: 'Margins and gaps are all the same.',
    best: (_how, isMet) => (isMet ? 'Every space the same' : 'Both sides alike'),
    spaces: 'the spaces',
  },
  margins: {
    name: 'Fixed margins',
    asks: 'The margins are given, the gaps share the rest.',
    best: (_how, isMet) => `Margins as given, ${isMet ? 'gaps' : 'both sides'} alike`,
    spaces: 'the gaps',
  },
  gaps: {
    name: 'Fixed gap',
    asks: 'The gaps are given, the margins share the rest.',
    best: () => 'Gaps as given, margins alike',
    spaces: 'the gaps',
  },
};

/** The number of stitches of rules that take one. */
const stitches: { readonly [Kind in Extract<SolvedRule, { stitches: number }>['kind']]: string } = {
  margins: 'Each margin',
  gaps: 'Each gap',
};

/** As it is written on a command line. */
function written(kind: string): string {
  return kind in stitches ? `${kind}:N` : kind;
}

const judges: { readonly [Judge in Band['judge']]: string } = {
  figure: 'what is seen',
  blocks: 'the pattern blocks',
};

/**
 * `13 stitches at each edge, 24 between`; where the seam takes some of the
 * margins, `13 stitches at each edge, 12 of them clear of the seam, 24 between`.
 */
function spaces({ margins: [left, right], gaps }: Spaces, taken = { left: 0, right: 0 }): string {
  const clear = [left - taken.left, right - taken.right] as const;
  // Where the seam takes some of the figure, that is said beside it.
  const isClear = taken.left + taken.right > 0 && Math.min(...clear) >= 0;
  const isAlike = left === right && (!isClear || clear[0] === clear[1]);
  const ofThem = (count: number): string => (isClear ? ` (${count} clear of the seam)` : '');
  const edges = isAlike
    ? `${n.stitches(left)} at each edge${isClear ? `, ${clear[0]} of them clear of the seam` : ''}`
    : `${n.stitches(left)}${ofThem(clear[0])} at the left edge and ${right}${ofThem(clear[1])} at the right`;
  const [first] = gaps;
  if (first === undefined) return edges;
  if (gaps.length === 1) return `${edges}, ${first} between`;
  if (gaps.every((gap) => gap === first)) return `${edges}, ${first} in each gap`;
  // A long list is no help in a sentence; the table beside it has every gap.
  const range = gaps.length <= 4 ? n.list(gaps.map(String)) : `${Math.min(...gaps)} to ${Math.max(...gaps)}`;
  return `${edges}, gaps of ${range}`;
}

/** What the eye makes of it all round, in the same words wherever it is said; nothing for one group. */
function round(judgement: RoundJudgement): string {
  switch (judgement.kind) {
    case 'one-group':
      return '';
    case 'even':
      return 'even all the way round';
    case 'seam-differs':
      return `the seam shows ${Math.abs(judgement.by)} ${judgement.by > 0 ? 'more' : 'fewer'} than between the groups`;
    case 'gaps-differ':
      return `the gaps differ by up to ${judgement.by}`;
  }
}

/** The same, behind what is said before it. */
function andRound(choice: PlacementChoice): string {
  const { acrossSeam, gaps } = seenRound(choice);
  const said = round(judgeRound(acrossSeam, gaps));
  return said === '' ? '' : `; ${said}`;
}

/** What the seam takes of what was spaced, where there is not so much of a margin. */
function takenBySeam({ acrossSeam, reason }: PlacementChoice): string {
  const what = reason.judge === 'figure' ? 'figure' : 'pattern blocks';
  const taken = reason.seamAllowance.left + reason.seamAllowance.right;
  return `the seam allowance of ${taken} takes ${-acrossSeam} of the ${what}`;
}

/** `the blocks lie 24 apart across the seam, the figures 26`; nothing where the figure was spaced. */
function blocksApart({ acrossSeam, ...choice }: PlacementChoice): string {
  if (choice.reason.judge === 'figure') return '';
  const seen = seenRound({ acrossSeam, ...choice }).acrossSeam;
  const figures = seen === acrossSeam ? '' : `, the figures ${seen}`;
  return `the blocks lie ${acrossSeam} apart across the seam${figures}`;
}

/** `seam allowance 2; across the seam 26; the seam shows 2 more than between the groups`. */
function seam(choice: PlacementChoice): string {
  const { acrossSeam, reason } = choice;
  const taken = reason.seamAllowance.left + reason.seamAllowance.right;
  if (acrossSeam < 0) return takenBySeam(choice);
  const shown = blocksApart(choice) || `across the seam ${acrossSeam}`;
  return `${taken === 0 ? '' : `seam allowance ${taken}; `}${shown}${andRound(choice)}`;
}

function judged({ reason, figure, blocks }: PlacementChoice): Spaces {
  return reason.judge === 'figure' ? figure : blocks;
}

/** What keeps the best choice from the rule, or nothing if it is met. */
function cost(choice: PlacementChoice): string {
  const { acrossSeam, reason } = choice;
  const { rule, imbalance, fromRule, ideal } = reason;
  if (ideal === null || (imbalance === 0 && fromRule === 0)) return '';
  const { margin, gap } = ideal;
  if (margin < 0 || (gap !== null && gap < 0)) return '; the seam allowance takes more than there is to share';
  const { gaps } = judged(choice);
  const share = [
    rule === 'margins' ? '' : exactMargin(margin, reason.seamAllowance),
    rule === 'gaps' || gap === null ? '' : `${n.plain(gap, 2)} between`,
  ].filter(Boolean);
  // Rounding moves no space by two needles; what does is a block that meets the edge or its neighbour.
  const isRounded =
    Math.abs(acrossSeam / 2 - margin) < 2 && gaps.every((space) => gap === null || Math.abs(space - gap) < 2);
  return isRounded
    ? `; needles are whole, and an exact share would be ${n.list(share)}`
    : `; the blank columns leave no room for the exact share of ${n.list(share)}`;
}

/** `12.5 at each edge`, `13.5 at each edge (12.5 clear of the seam)`; `clear` is what the seam leaves. */
function exactMargin(clear: number, { left, right }: Reason['seamAllowance']): string {
  if (left !== right) return `${n.plain(clear, 2)} clear of the seam at each edge`;
  return left === 0
    ? `${n.plain(clear, 2)} at each edge`
    : `${n.plain(clear + left, 2)} at each edge (${n.plain(clear, 2)} clear of the seam)`;
}

/** The best choice, in a few words. */
function asBest(choice: PlacementChoice): string {
  const { rule, judge, imbalance, fromRule } = choice.reason;
  const differing = `the two sides differing by ${n.stitches(imbalance)}`;
  if (rule === 'by-hand') return `Placed by hand, ${imbalance === 0 ? 'both sides alike' : differing}`;
  if (imbalance > 0) return `As near as it comes, ${differing}`;
  if (choice.acrossSeam < 0) return 'Both sides alike';
  const how = judge === 'figure' ? 'to the eye' : 'by the blocks';
  if (choice.groups.length === 1) return `Centred ${how}`;
  return solved[rule].best(how, fromRule === 0);
}

/** What a later choice costs against the best. */
function asNext(choice: PlacementChoice, behindBy: Exclude<Reason['behindBy'], null>): string {
  const { rule, imbalance, fromRule } = choice.reason;
  switch (behindBy) {
    case 'imbalance':
      return `Not as near as the first, the two sides differing by ${n.stitches(imbalance)}`;
    case 'from-rule':
      return `${imbalance === 0 ? 'Both sides alike' : 'Both sides as near as in the first'}, but ${rule === 'by-hand' ? 'the gaps' : solved[rule].spaces} differ by up to ${fromRule}`;
    case 'gap-spread': {
      const { gaps } = judged(choice);
      return `As near the rule as the first, but the gaps differ by up to ${Math.max(...gaps) - Math.min(...gaps)}`;
    }
    case 'narrower-margins':
      return 'As near as the first, with narrower margins';
    case 'further-right':
      return 'As near as the first, further to the right';
  }
}

const rules: { readonly [Kind in PlacementRule['kind']]: Pick<RuleWords, 'name' | 'asks'> } = {
  ...solved,
  'by-hand': { name: 'By hand', asks: 'The left-hand needle of each group is given.' },
};

export const placement = {
  /** The name of each rule, for forms, and what it asks, in a sentence. */
  rules,
  /** The number of stitches of rules that take one, for forms. */
  stitches,
  /** How rules are written on a command line, `N` being a number of stitches. */
  written: `${Object.keys(solved).map(written).join(', ')} or by-hand:L48,R12`,
  /** What is evened out. */
  judges,
  /** `13 stitches at each edge, 24 between`: all stitches, and how many of them are clear of the seam. */
  spaces,
  /** Why the best choice leads, or what a later one costs, in a sentence. */
  why(choice: PlacementChoice): string {
    const { reason } = choice;
    const head = reason.behindBy === null ? asBest(choice) : asNext(choice, reason.behindBy);
    const price = reason.behindBy === null ? cost(choice) : '';
    return `${head}: ${spaces(judged(choice), reason.seamAllowance)}; ${seam(choice)}${price}.`;
  },
  /** What the eye makes of the spaces round the closed piece; nothing for one group. */
  round,
  /** The same for where the spaces are drawn and numbered: `Even to the eye; seam 22; even all the way round.` */
  whyBesideDrawing(choice: PlacementChoice): string {
    const { reason, acrossSeam } = choice;
    const shown = blocksApart(choice) || `seam ${acrossSeam}`;
    const closed = acrossSeam < 0 ? takenBySeam(choice) : `${shown}${andRound(choice)}`;
    if (reason.behindBy !== null) return `${asNext(choice, reason.behindBy)}; ${closed}.`;
    return `${asBest(choice)}; ${closed}${cost(choice)}.`;
  },
};
