/** Keeping every core busy, as a machine does that has other work. */
import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';

/** Starts as many busy loops as there are cores. Returns what ends them. */
export function keepBusy(): () => void {
  const loops = Array.from({ length: availableParallelism() }, () =>
    // A loop outlives nobody: it ends with the pipe to the one who started it.
    spawn(
      process.execPath,
      [
        '-e',
        'process.stdin.resume().on("end", () => process.exit()); (function spin() { const until = Date.now() + 50; while (Date.now() < until); setImmediate(spin); })();',
      ],
      {
        stdio: ['pipe', 'ignore', 'inherit'],
      },
    ),
  );
  return () => {
    for (const loop of loops) loop.kill();
  };
}
