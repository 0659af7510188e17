/** Whoever came by a key of the running host reaches what the program opens and writes, and nothing else. */
import { mkdirSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { callAs, comeIn, type Caller } from '../unit/host/calling.ts';
import { expect, test } from './app.ts';
import { textOf, twelveStitchMotif } from './projects.ts';

const PROJECT = textOf(twelveStitchMotif([1]));
const refused = (code: string) => ({ ok: false, problem: { code } });

function read(caller: Caller, path: string): Promise<unknown> {
  return callAs(caller, 'documents.read', { path });
}
function write(caller: Caller, path: string, text = PROJECT): Promise<unknown> {
  return callAs(caller, 'documents.write', { path, text, expect: { kind: 'nothing' } });
}

test.describe('a holder of the host’s key', () => {
  test('reads no secret, by whatever name', async ({ host, home }) => {
    mkdirSync(join(home, '.ssh'));
    writeFileSync(join(home, '.ssh', 'id_rsa'), 'a secret key');
    writeFileSync(join(home, 'diary.txt'), 'a secret thought');
    writeFileSync(join(home, 'diary.walewright'), 'a secret thought');
    symlinkSync(join(home, '.ssh', 'id_rsa'), join(home, 'chart.png'));
    const caller = await comeIn(await host.newAddress());
    const answers = [
      await read(caller, join(home, '.ssh', 'id_rsa')),
      await read(caller, join(home, 'chart.png')),
      await read(caller, join(home, 'diary.txt')),
      await read(caller, join(home, 'diary.walewright')),
      await read(caller, '/etc/passwd'),
    ];
    expect(answers).toMatchObject([
      refused('path-closed'),
      refused('path-closed'),
      refused('photo-unknown-kind'),
      refused('project-not-ours'),
      refused('photo-unknown-kind'),
    ]);
    expect(JSON.stringify(answers)).not.toMatch(/secret|root:/);
    const listed = await callAs(caller, 'folders.list', { folder: home });
    expect(listed).toMatchObject({
      ok: true,
      value: { entries: [{ name: 'chart.png' }, { name: 'diary.walewright' }] },
    });
    expect(await callAs(caller, 'folders.list', { folder: join(home, '.ssh') })).toMatchObject(refused('path-closed'));
  });

  test('writes nothing that runs, nothing hidden, and over nothing of somebody else', async ({ host, home }) => {
    mkdirSync(join(home, '.config'));
    writeFileSync(join(home, 'diary.walewright'), 'mine');
    writeFileSync(join(home, 'sleeve.walewright'), PROJECT);
    const before = readdirSync(home, { recursive: true });
    const caller = await comeIn(await host.newAddress());
    expect(await write(caller, join(home, '.bashrc'))).toMatchObject(refused('path-closed'));
    expect(await write(caller, join(home, 'start.sh'))).toMatchObject(refused('path-closed'));
    expect(await write(caller, join(home, '.config', 'a.walewright'))).toMatchObject(refused('path-closed'));
    expect(await write(caller, join(home, 'a.walewright'), 'rm -rf ~')).toMatchObject(refused('project-not-json'));
    expect(await write(caller, join(home, 'diary.walewright'))).toMatchObject(refused('file-exists'));
    expect(await write(caller, join(home, 'sleeve.walewright'))).toMatchObject(refused('file-exists'));
    expect(readdirSync(home, { recursive: true })).toEqual(before);
    expect(readFileSync(join(home, 'diary.walewright'), 'utf8')).toBe('mine');
  });
});
