/** Running the Electron shell. */
import { spawn } from 'node:child_process';
import { terminalWords } from '@shared/words/terminal.ts';

/**
 * Resolves when Electron has ended: with null if it ended well or was told to,
 * else with how it ended. `given` are its arguments.
 */
export function runElectron(binary: string, given: readonly string[]): Promise<string | null> {
  const { ELECTRON_RUN_AS_NODE: _, ...variables } = process.env;
  const shell = spawn(binary, given, { env: variables, stdio: 'inherit', windowsHide: false });
  let isTold = false;
  const tell = (signal: NodeJS.Signals): void => {
    isTold = true;
    shell.kill(signal);
  };
  const signals = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;
  for (const signal of signals) process.on(signal, tell);
  return new Promise((resolve) => {
    const finish = (how: string | null): void => {
      for (const signal of signals) process.off(signal, tell);
      resolve(isTold ? null : how);
    };
    shell.on('error', (error) => finish(error.message));
    shell.on('exit', (code, signal) => {
      if (signal !== null) finish(terminalWords.launcher.endedBy(signal));
      else finish(code === 0 || code === null ? null : terminalWords.launcher.exitCode(code));
    });
  });
}
