/** The English catalogue, one subject a file. */
import { allOver } from './all-over.ts';
import { knitting } from './knitting.ts';
import { lengths } from './lengths.ts';
import { menu } from './menu.ts';
import { motif } from './motif.ts';
import { motifs } from './motifs.ts';
import { moving } from './moving.ts';
import { numberFields, numberUnits } from './number-fields.ts';
import { numbers } from './numbers.ts';
import { placement } from './placement.ts';
import { problems } from './problems/index.ts';
import { changes } from './changes.ts';
import { commands } from './commands.ts';
import { closed } from './closed.ts';
import { dates } from './dates.ts';
import { doubts } from './doubts.ts';
import { forms, shell, windowTrouble } from './shell.ts';
import { making } from './making.ts';
import { measure, understanding } from './measure.ts';
import { piece } from './piece.ts';
import { pictures } from './pictures.ts';
import { reading } from './reading.ts';
import { sections } from './sections.ts';
import { sheetBench } from './sheet-bench.ts';
import { pieces } from './pieces.ts';
import { sizes } from './sizes.ts';
import { starting } from './starting.ts';
import { underlay } from './underlay.ts';
import { whyNot } from './why-not.ts';

export const english = {
  allOver,
  sheetBench,
  shell,
  forms,
  doubts,
  changes,
  commands,
  closed,
  dates,
  making,
  measure,
  knitting,
  lengths,
  menu,
  windowTrouble,
  motif,
  motifs,
  moving,
  numberFields,
  numberUnits,
  numbers,
  pictures,
  piece,
  placement,
  problems,
  reading,
  sections,
  pieces,
  sizes,
  understanding,
  starting,
  underlay,
  whyNot,
};
