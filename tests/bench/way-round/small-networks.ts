/**
 * Searches on small random networks against every walk over the raw tags: one-ways, restrictions by node and by way,
 * zones, barriers, parallel roads, loops. Questions with too many walks to try are left out and counted.
 * Arguments: how many questions, first seed.
 */
import { askNetwork } from '../../support/way-round/ask-small.ts';
import { tellRow } from '../table.ts';

/** Questions asked of one network. */
const EACH = 30;

const [questions = 100_000, first = 1] = process.argv.slice(2).map(Number);
let [asked, ways, left, differ, networks] = [0, 0, 0, 0, 0];
for (let seed = first; asked < questions; seed++) {
  const answers = askNetwork(seed, EACH);
  networks++;
  asked += answers.length;
  left += EACH - answers.length;
  for (const { found, brute } of answers) {
    if (brute !== 'none') ways++;
    if (found.every((each) => each === brute)) continue;
    differ++;
    console.log(`    network ${seed}: searches ${found.join(' and ')}, all walks ${brute}`);
  }
}
console.log(
  `${asked} questions on ${networks} networks (${ways} with a way, ${left} left out): ${differ} differ`,
);
tellRow({
  work: 'ways on small random networks',
  must: '0 differ of 100,000',
  aim: '',
  measured: `${differ} of ${asked.toLocaleString('en')} (${ways.toLocaleString('en')} with a way)`,
  reference: 'every walk over the raw tags',
});
if (differ > 0) process.exitCode = 1;
