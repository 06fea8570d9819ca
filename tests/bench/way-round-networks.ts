/**
 * Searches on small random networks against every walk over the raw tags: one-ways, restrictions by node and by way,
 * zones, barriers, parallel roads, loops. Networks with too many walks to try are left out and counted.
 * Arguments: how many questions, first seed.
 */
import { askOnce } from '../support/way-round/ask-small.ts';

const [questions = 2000, first = 1] = process.argv.slice(2).map(Number);
let [asked, ways, left, differ] = [0, 0, 0, 0];
for (let seed = first; asked < questions; seed++) {
  const one = askOnce(seed);
  if (one === undefined) {
    left++;
    continue;
  }
  asked++;
  if (one.brute !== 'none') ways++;
  if (one.found.every((each) => each === one.brute)) continue;
  differ++;
  console.log(`    network ${seed}: searches ${one.found.join(' and ')}, all walks ${one.brute}`);
}
console.log(`${asked} questions (${ways} with a way, ${left} left out): ${differ} differ`);
if (differ > 0) process.exitCode = 1;
