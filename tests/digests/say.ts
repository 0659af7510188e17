/**
 * Prints what is said of one project, to be compared line by line:
 * `tsx tests/digests/say.ts 2 117` for project 117 of version 2, or with the
 * name of a fixture.
 */
import { fixtureText } from './fixtures.ts';
import { generatedFile, type Version } from './generated/project-file.ts';
import { saidOf } from './said.ts';

const [what, number] = process.argv.slice(2) as [string, string?];
const text =
  number === undefined ? fixtureText(what) : JSON.stringify(generatedFile(Number(what) as Version, Number(number)));
const { plans, file } = saidOf(text);
for (const plan of plans) console.log(JSON.stringify(JSON.parse(plan), null, 1));
console.log(file);
