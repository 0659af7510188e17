/** The English catalogue, one subject a file. */
import { knitting } from './knitting.ts';
import { launcher } from './launcher.ts';
import { menu } from './menu.ts';
import { numbers } from './numbers.ts';
import { problems } from './problems.ts';
import { changes } from './changes.ts';
import { findings } from './findings.ts';
import { forms } from './forms.ts';
import { measure } from './measure.ts';
import { pictures } from './pictures.ts';
import { piece } from './piece.ts';
import { shell } from './shell.ts';

export const english = {
  shell,
  findings,
  forms,
  changes,
  measure,
  knitting,
  launcher,
  menu,
  numbers,
  pictures,
  piece,
  problems,
};
