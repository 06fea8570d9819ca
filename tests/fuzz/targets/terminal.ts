import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { checkCommand } from '../../../main/cli/check/check-command.ts';
import { loadCommand } from '../../../main/cli/load-command.ts';
import { readStartArguments } from '../../../main/cli/start/start-arguments.ts';
import { swingCommand } from '../../../main/cli/swing-command.ts';
import { terminalOf } from '../../support/terminal.ts';
import { hostileText } from '../make/hostile.ts';
import { mutateJson } from '../make/mutate-json.ts';
import { samplePath } from '../make/samples.ts';
import { faultInSentence } from '../promises.ts';
import { jsonTarget } from '../target.ts';

const COMMANDS = { check: checkCommand, load: loadCommand, swing: swingCommand };
type Command = keyof typeof COMMANDS;

interface Called {
  readonly command: Command;
  readonly words: readonly string[];
}

const VEHICLE = ['--vehicle', samplePath('vehicles/panel-van-6.0.json')];
const SOUND: readonly Called[] = [
  {
    command: 'check',
    words: [
      '--route',
      samplePath('drives/clear.gpx'),
      '--map',
      samplePath('no-such.osm'),
      ...VEHICLE,
      '--leave',
      '2027-06-12T09:30',
      '--json',
    ],
  },
  { command: 'load', words: [...VEHICLE, '--load', samplePath('loads/family-of-four.json'), '--json'] },
  {
    command: 'swing',
    words: [...VEHICLE, '--path', samplePath('loads/family-of-four.json'), '--follow', 'front', '--json'],
  },
];
const WORDS =
  '--route --map --vehicle --load --path --follow --leave --country --track --out --json --help -h -- - --json=1 GB front rear 2027-06-12T09:30'.split(
    ' ',
  );

const folder = mkdtempSync(join(tmpdir(), 'lanegauge-fuzz-'));

/** Words after a command: each call ends with 0, 1 or 2, and with 2 in one sentence and nothing printed. */
export const commandLine = jsonTarget<Called>({
  name: 'command line',
  weight: 2,
  make(random) {
    const { command, words } = random.pick(SOUND);
    const mutated = [mutateJson(words, random)].flat().filter((word) => typeof word === 'string');
    const more = random.chance(0.5)
      ? [random.pick(WORDS), random.chance(0.5) ? random.pick(WORDS) : hostileText(random)]
      : [];
    const all = random.chance(0.5) ? [...mutated, ...more] : [...more, ...mutated];
    return { command, words: all.filter((word) => !reachesOut(word)).slice(0, 400) };
  },
  async check({ command, words }) {
    const { terminal, said } = terminalOf(folder);
    const code = await COMMANDS[command](words, terminal);
    const start = readStartArguments(words, folder);
    if (!start.ok && faultInSentence(start.error.message) !== undefined)
      return faultInSentence(start.error.message);
    if (code === 2)
      return said.out === '' ? faultInSentence(said.complaint) : 'refused, and yet something is printed';
    if (code !== 0 && code !== 1) return `ends with ${code}`;
    return said.out === '' ? 'ends well and prints nothing' : undefined;
  },
});

/** Files are written where `--out` says: nothing outside the folder of the test. */
function reachesOut(word: string): boolean {
  return /^--o/.test(word) || word.includes('..');
}
