/** The order of tests for a fault: what is likely to see it and quick to ask comes first. */
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** The name of the folder that the fault is in; set for the process that runs the tests. */
export const FOLDER_VARIABLE = 'WALEWRIGHT_MUTANT_FOLDER';

/** They take longest. */
const SLOW =
  /(order-mistakes|bed-simulated|placement-exhaustive|property\/(knitting|shaping|sizes|history|edit-commands))\.test/;

function rank(path: string, folder: string): number {
  if (SLOW.test(path)) return 4;
  if (path.includes(folder)) return 0;
  return ['/tests/reference/', '/tests/unit/', '/tests/property/'].findIndex((part) => path.includes(part)) + 1;
}

export class NearestFirst extends BaseSequencer {
  override sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const folder = `/${process.env[FOLDER_VARIABLE] ?? ''}`;
    const order = (file: TestSpecification): number => rank(file.moduleId, folder);
    return Promise.resolve([...files].sort((a, b) => order(a) - order(b) || (a.moduleId < b.moduleId ? -1 : 1)));
  }
}
