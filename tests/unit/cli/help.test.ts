import { describe, expect, it } from 'vitest';
import { terminalWords } from '@shared/words/terminal.ts';
import { allCommands } from '../../../src-main/cli/commands/index.ts';
import { call } from './calls.ts';

const commands = await allCommands();

describe('help', () => {
  it.each([[[]], [['--help']], [['-h']]])('for %j lists every command', async (typed) => {
    const { status, out } = await call(...typed);
    expect(status).toBe(0);
    for (const { name } of commands) expect(out).toContain(terminalWords.cli.commands[name]);
  });

  it.each(commands.map(({ name }) => name))('on %s says what it takes', async (name) => {
    const command = commands.find((candidate) => candidate.name === name);
    for (const flag of ['--help', '-h']) {
      const { status, out } = await call(name, flag);
      expect(status).toBe(0);
      expect(out).toContain(`Usage: npm run -s cli -- ${name}`);
      for (const option of command?.options ?? []) expect(out).toContain(`--${option}`);
    }
  });

  it('stands above what else was typed', async () => {
    expect((await call('place', '--help', '--stitches', '5')).status).toBe(0);
  });

  it('has no line too long to read', async () => {
    for (const { name } of commands) {
      for (const line of (await call(name, '--help')).out.split('\n')) expect(line.length).toBeLessThanOrEqual(130);
    }
  });
});
