/** Reads one picture file as the command line does, and says what that took. Run as a process of its own. */
import { readFileSync } from 'node:fs';
import { outcome } from '@shared/problem/index.ts';
import { decodePhoto } from '@shared/reading/index.ts';
import { ownPeakMb } from '../own-peak.ts';

const bytes = new Uint8Array(readFileSync(process.argv[2] as string));
const used = process.cpuUsage();
const read = outcome(() => decodePhoto(bytes));
const { user, system } = process.cpuUsage(used);
console.log(
  JSON.stringify({
    code: read.ok ? null : read.problem.code,
    megabytes: ownPeakMb(),
    seconds: (user + system) / 1e6,
  }),
);
