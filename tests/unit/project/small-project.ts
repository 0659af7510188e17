/** A small project, and its file as each version wrote it. */
import { gridFromText } from '@shared/grid/index.ts';
import { projectAround, START_YARNS, type Project } from '@shared/project/index.ts';
import { fixtureText } from '../../digests/fixtures.ts';

export const small: Project = {
  ...projectAround('two gulls', 'gull', gridFromText(['X.X', '.X.'], '.X'), 0, 'worn', START_YARNS),
};

/** Its file as each version wrote it: files out there hold it, so it never changes. */
export const TEXT_OF_VERSION_1 = fixtureText('two-gulls-1.walewright');
export const TEXT_OF_VERSION_2 = fixtureText('two-gulls-2.walewright');
export const TEXT_OF_VERSION_3 = fixtureText('two-gulls-3.walewright');
export const TEXT_OF_VERSION_4 = fixtureText('two-gulls-4.walewright');
export const TEXT_OF_VERSION_5 = fixtureText('two-gulls-5.walewright');
export const TEXT_OF_VERSION_6 = fixtureText('two-gulls-6.walewright');
export const TEXT_OF_VERSION_7 = fixtureText('two-gulls-7.walewright');

/** The same project as it is written now. A change here needs a new file version. */
export const SMALL_TEXT = fixtureText('two-gulls-8.walewright');

/** A picture to trace that may lie behind its motif. */
export const UNDERLAY = {
  picture: 'data:image/png;base64,iVBORw0KGgo=',
  left: -0.5,
  bottom: 2.25,
  columns: 12,
  rows: 9.5,
  opacity: 0.6,
  turn: 0,
  isShown: true,
};
