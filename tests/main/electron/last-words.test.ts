import { expect, it, vi } from 'vitest';

it('what nobody caught ends the program with a sentence on the screen and the error stream', async () => {
  vi.doMock('electron', () => import('./fake-electron.ts'));
  const fake = await import('./fake-electron.ts');
  const { endWith } = await import('../../../main/electron/last-words.ts');
  const said = vi.spyOn(process.stderr, 'write').mockReturnValue(true);
  const noted: string[] = [];
  endWith({ path: '', note: (what) => noted.push(what) }, new RangeError('too\u001b[31m deep'));
  const [line] = said.mock.calls.map(([text]) => String(text));
  said.mockRestore();
  expect(line).toMatch(/^lanegauge: Something went wrong inside the program\P{Cc}*RangeError\P{Cc}*\n$/u);
  expect(fake.dialog.errors).toEqual([line?.replace('lanegauge', 'Lanegauge').trim()]);
  expect(noted).toEqual(['ended']);
  expect(fake.app.done).toEqual(['exit 2']);
});
