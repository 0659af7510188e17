/**
 * Names as lines of a terminal can hold them.
 *
 * Names come from people and from files of strangers. A line end in one would
 * break the line that it stands in, and a control could move the cursor or
 * turn the rest of the line round. Files and `--json` keep names as they are.
 */
import { repositioned } from '@shared/pattern/index.ts';
import type { Place } from '@shared/piece/index.ts';
import { makePlan, type Plan } from '@shared/plan/index.ts';
import { pieceIn, type Workpiece } from '@shared/project/index.ts';

/** Line ends and tabs, and all other controls. */
const BREAKS = /[\p{Cc}\p{Zl}\p{Zp}]+/gu;
/** All controls but the line ends that the program writes itself, and what turns the direction of reading. */
const UNSEEN = /(?!\n)\p{Cc}|\p{Bidi_Control}/gu;

/** A name on one line: what breaks a line is one blank. */
export function onOneLine(name: string): string {
  return name.replace(BREAKS, ' ').trim() || '?';
}

/** Text without controls, to be printed as it is. */
export function printed(text: string): string {
  return text.replace(UNSEEN, '');
}

/** A project and its plan with names that a line can hold: those given, where all of them can. */
export function onLines(project: Workpiece, plan: Plan): [Workpiece, Plan] {
  const lines = withNamesOnOneLine(project);
  return lines === project ? [project, plan] : [lines, makePlan(pieceIn(lines))];
}

/** The same project with names and tensions that a line can hold. The same value where all of them can. */
function withNamesOnOneLine(project: Workpiece): Workpiece {
  const { piece, patterns } = project;
  const { waste, facing, turningRow, outside, joiningRow, main, pattern, lastRow } = piece.tension;
  const tensions = [waste, facing, turningRow, outside, joiningRow, main, pattern, lastRow];
  const all = [project, ...project.yarns, ...project.motifs, piece, ...piece.sections].map(({ name }) => name);
  if (![...all, ...tensions, ...piece.sections.map((part) => part.tension)].some((text) => text.search(BREAKS) >= 0)) {
    return project;
  }
  const named = <Named extends { readonly name: string }>(one: Named): Named => ({ ...one, name: onOneLine(one.name) });
  const tension = Object.fromEntries(
    Object.entries(piece.tension).map(([rows, text]) => [rows, text.replace(BREAKS, ' ')]),
  ) as typeof piece.tension;
  const sections = sectionNames(piece.sections.map(({ name }) => name));
  return {
    ...named(project),
    yarns: project.yarns.map(named),
    motifs: project.motifs.map(named),
    piece: {
      ...named(piece),
      tension,
      sections: piece.sections.map((part) => ({
        ...part,
        name: sections.get(part.name) as string,
        tension: part.tension.replace(BREAKS, ' '),
      })),
    },
    patterns: patterns.map((pattern) => repositioned(pattern, (place) => inSection(place, sections))),
  };
}

/** What each section is called on a line: no two alike, as no two of a piece are. */
function sectionNames(names: readonly string[]): ReadonlyMap<string, string> {
  const taken = new Set<string>();
  return new Map(
    names.map((name) => {
      const line = onOneLine(name);
      let called = line;
      for (let number = 2; taken.has(called); number++) called = `${line} (${number})`;
      taken.add(called);
      return [name, called];
    }),
  );
}

function inSection<P extends Place>(place: P, sections: ReadonlyMap<string, string>): P {
  if (!('section' in place) || typeof place.section === 'string') return place;
  const { named: part } = place.section;
  return { ...place, section: { named: sections.get(part) ?? onOneLine(part) } };
}
