/**
 * What must hold when a map or a vehicle is changed, on random towns: numbering, islands and cut ways change no cost; a
 * further bar and a taller vehicle make no way cheaper; the way back costs what the way there does.
 * Arguments: how many towns, crossings along a side.
 */
import { holdChanges } from '../../support/way-round/hold-changes.ts';
import { tellRow } from '../table.ts';

const QUESTIONS = 40;
const [towns = 150, side = 8] = process.argv.slice(2).map(Number);
let asked = 0;
const broken: string[] = [];
for (let seed = 1; seed <= towns; seed++) {
  const held = holdChanges(seed, side, QUESTIONS);
  asked += held.asked;
  broken.push(...held.broken);
}
for (const one of broken.slice(0, 20)) console.log(`    ${one}`);
console.log(`${asked} questions on ${towns} towns, each on seven changed maps: ${broken.length} do not hold`);
tellRow({
  work: 'ways on changed maps: renumbered, cut, mirrored, barred, taller',
  must: '0 broken',
  aim: '',
  measured: `${broken.length} of ${(6 * asked).toLocaleString('en')}`,
  reference: 'the map as it was',
});
if (broken.length > 0) process.exitCode = 1;
