/**
 * Names for what a process leaves on disk while it writes, from which any
 * other process can tell whether the one that left it is still running.
 *
 * A process number alone says little: after a crash the system may give it to
 * something else. Where the system tells when a process began (Linux), the
 * name holds that too.
 */
import { createHash, randomBytes } from 'node:crypto';
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

/** Whether whoever left something is still at it; `unknown` for another machine, or where the system does not tell. */
export type WriterState = 'running' | 'ended' | 'unknown';

export interface Processes {
  /** A name for one piece of work of this process; letters, digits and hyphens. No two are alike. */
  begin(): string;
  /** The work of that name is over, whatever is left of it. */
  end(name: string): void;
  /** Null for what is no such name. */
  stateOf(name: string): WriterState | null;
}

const NAME = /^([0-9a-f]{8})-([0-9a-f]{8})-(\d{1,10})-(\d{1,20})-[0-9a-f]{16}$/;

function theseProcesses(): Processes {
  // Two sandboxes on one machine number their processes apart.
  const host = shortHash(`${hostname()}\n${tryTo(() => readlinkSync('/proc/self/ns/pid')) ?? ''}`);
  const boot = shortHash(tryTo(() => readFileSync('/proc/sys/kernel/random/boot_id', 'utf8')) ?? '');
  const own = `${host}-${boot}-${process.pid}-${beginningOf(process.pid) ?? 0}`;
  const goingOn = new Set<string>();
  return {
    begin() {
      const name = `${own}-${randomBytes(8).toString('hex')}`;
      goingOn.add(name);
      return name;
    },
    end: (name) => void goingOn.delete(name),
    stateOf(name) {
      const match = NAME.exec(name);
      if (!match) return null;
      const [, itsHost, itsBoot, pid, beginning] = match;
      if (itsHost !== host) return 'unknown';
      if (itsBoot !== boot) return 'ended';
      if (name.startsWith(`${own}-`)) return goingOn.has(name) ? 'running' : 'ended';
      if (!isThere(Number(pid))) return 'ended';
      const now = beginningOf(Number(pid));
      if (now === null || beginning === '0') return 'unknown';
      return now === beginning ? 'running' : 'ended';
    },
  };
}

/** When the process began, in ticks since the machine did: field 22 of proc_pid_stat(5). Null where it cannot be had. */
function beginningOf(pid: number): string | null {
  const stat = tryTo(() => readFileSync(`/proc/${pid}/stat`, 'utf8'));
  // The second field is the program's name in brackets, which may hold blanks and brackets.
  const fields = stat?.slice(stat.lastIndexOf(')') + 2).split(' ');
  return fields?.[19] ?? null;
}

function isThere(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // EPERM: it is there and belongs to somebody else.
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}

function shortHash(text: string): string {
  return createHash('sha256').update(text).digest('hex').slice(0, 8);
}

function tryTo<T>(read: () => T): T | null {
  try {
    return read();
  } catch {
    return null;
  }
}

/** The processes of this machine, as the system tells of them. */
export const processesHere: Processes = theseProcesses();
