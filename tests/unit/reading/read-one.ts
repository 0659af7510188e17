/** Reads one picture file as the command line does, and says what that took. Run as a process of its own. */
import { readFileSync } from 'node:fs';
import { outcome } from '@shared/problem/index.ts';
import { decodePhoto } from '@shared/reading/index.ts';

/** The most memory that this process has held, in MB. What Linux adds up for usage begins with what the parent held. */
function mostMegabytes(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS / 1024;
  const [, kilobytes] = /^VmHWM:\s*(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8')) ?? [];
  return Number(kilobytes) / 1024;
}

const bytes = new Uint8Array(readFileSync(process.argv[2] as string));
const used = process.cpuUsage();
const read = outcome(() => decodePhoto(bytes));
const { user, system } = process.cpuUsage(used);
console.log(
  JSON.stringify({
    code: read.ok ? null : read.problem.code,
    megabytes: mostMegabytes(),
    seconds: (user + system) / 1e6,
  }),
);
