/** That the generated projects ask everything there is to ask. */
import { branchesOf, countBranches } from './branches.ts';
import { BATCH, BATCHES } from './digest.ts';
import { generatedFile, type Version } from './generated/project-file.ts';
import { schemaOf } from './schemas.ts';

/** Each branch of the schema is taken at least so often. */
export const LEAST = 50;

/** The branches of a version that too few of its projects take, with how often they do. */
export function branchesTooRare(version: Version): string[] {
  const schema = schemaOf(version);
  const counts = branchesOf(schema);
  const known = counts.size;
  for (let number = 0; number < BATCHES[version] * BATCH; number++) {
    countBranches(schema, generatedFile(version, number), counts);
  }
  if (counts.size !== known) throw new Error(`Files of version ${version} take branches that their schema has not`);
  return [...counts].filter(([, count]) => count < LEAST).map(([branch, count]) => `${branch}: ${count}`);
}
