/** What a test's child process has held of memory. */
import { readFileSync } from 'node:fs';

/** The most that this process has held, in MB. What Linux adds up for usage begins with what the parent held. */
export function ownPeakMb(): number {
  if (process.platform !== 'linux') return process.resourceUsage().maxRSS / 1024;
  const [, kilobytes] = /^VmHWM:\s*(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8')) ?? [];
  return Number(kilobytes) / 1024;
}
