import { expect, it } from 'vitest';
import { exitForAll, type Handed, sayHanded } from '../../../main/cli/hand-over/say-handed.ts';

const pair = (change: Partial<Handed>): Handed => ({
  drive: 'd',
  vehicle: 'v',
  folder: 'Yard-to-shore',
  number: 'AB12-CD34',
  verdict: 'clear',
  ...change,
});

it('of several handed over, one over a plate as loaded is told beneath its line and in the exit code', () => {
  const over = 'AS LOADED OVER: gross by 26 kg. Do not leave like this.';
  const handed = [pair({}), pair({ over, folder: 'Yard-to-mill' })];
  expect(exitForAll(handed)).toBe(1);
  expect(exitForAll([pair({})])).toBe(0);
  expect(exitForAll([pair({ verdict: 'barred' })])).toBe(1);
  const said = sayHanded(handed, 'out', 100);
  expect(said).toContain(`Yard-to-mill\n${over}\n`);
  expect(said).toContain('Do not leave as loaded: 1 of these is over a plate.');
  expect(sayHanded([pair({})], 'out', 100)).not.toContain('as loaded');
});
