/**
 * One build at a time in a folder: two starts at once would each clear what
 * the other one is writing. Plain JavaScript without dependencies: it runs
 * before anything has been built.
 */
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

/** How often a job of another process is looked for, in ms. */
const LOOK_MS = 100;

/**
 * Does the job while no other process does one under the same lock.
 * @template T
 * @param {string} lock path of the lock, a file that names its holder
 * @param {() => void} whenWaiting told once if another process has it
 * @param {() => T} job
 * @returns {T}
 */
export function oneAtATime(lock, whenWaiting, job) {
  mkdirSync(dirname(lock), { recursive: true });
  for (let isTold = false; !isMade(lock);) {
    if (isGone(lock)) continue;
    if (!isTold) whenWaiting();
    isTold = true;
    Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, LOOK_MS);
  }
  try {
    return job();
  } finally {
    rmSync(lock, { force: true });
  }
}

/** Makes the lock, with its holder in it in the same step; false if it is there. @param {string} lock */
function isMade(lock) {
  const aside = `${lock}-by-${process.pid}`;
  writeFileSync(aside, String(process.pid));
  try {
    linkSync(aside, lock);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}

/** True if there is no lock, or none any more: one whose process has ended is taken away. @param {string} lock */
function isGone(lock) {
  const holder = holderOf(lock);
  if (holder === null) return true;
  if (isRunning(Number(holder))) return false;
  // Moved first, for another process may have found the same and made its own by now, which goes back.
  const aside = `${lock}-left-${process.pid}`;
  try {
    renameSync(lock, aside);
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return true;
    throw error;
  }
  const isLeft = holderOf(aside) === holder;
  if (isLeft) rmSync(aside, { force: true });
  else renameSync(aside, lock);
  return isLeft;
}

/** Number of the process that holds the lock, as text, or null where there is none. @param {string} lock */
function holderOf(lock) {
  try {
    return readFileSync(lock, 'utf8');
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return null;
    throw error;
  }
}

/** @param {number} pid */
function isRunning(pid) {
  try {
    return process.kill(pid, 0);
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}

/** @param {unknown} error */
function codeOf(error) {
  return error instanceof Error && 'code' in error ? error.code : null;
}
