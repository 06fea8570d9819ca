import { askMeant } from '../../geo/units/slips.ts';
import { clip } from '../../geo/units/text.ts';
import { PROGRAM } from '../version.ts';
import { helpOf } from './help.ts';
import { runProgram } from './run-program.ts';
import type { Terminal } from './terminal.ts';

type Command = (words: readonly string[], terminal: Terminal) => Promise<number>;

/** Each is loaded when it is asked for: a swing needs no map reader. */
const COMMANDS: Readonly<Record<string, () => Promise<Command>>> = {
  check: async () => {
    (await import('./check/check-thread.ts')).readyCheck();
    return (await import('./check/check-command.ts')).checkCommand;
  },
  'hand-over': async () => (await import('./hand-over/hand-over-command.ts')).handOverCommand,
  load: async () => (await import('./load-command.ts')).loadCommand,
  plan: async () => {
    (await import('./plan/plan-thread.ts')).readyPlan();
    return (await import('./plan/plan-command.ts')).planCommand;
  },
  shelf: async () => (await import('./shelf/shelf-command.ts')).shelfCommand,
  swing: async () => (await import('./swing-command.ts')).swingCommand,
  yard: async () => (await import('./yard/yard-command.ts')).yardCommand,
};

/** Runs the command named by the first word. @returns the exit code */
async function run(words: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...rest] = words;
  if (name === '--help' || name === '-h' || (name !== undefined && rest.includes('--help'))) {
    terminal.out(helpOf(name));
    return 0;
  }
  if (name === '--version') {
    terminal.out(`${PROGRAM}\n`);
    return 0;
  }
  const command = name === undefined ? undefined : Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!command) {
    const said =
      name === undefined
        ? 'No command given.'
        : `There is no command '${clip(name)}'${askMeant(name, Object.keys(COMMANDS), (word) => `'${word}'`)}.`;
    terminal.complain(
      `${said} The commands are: ${Object.keys(COMMANDS).join(', ')}. See 'lanegauge --help'.`,
    );
    return 2;
  }
  return (await command())(rest, terminal);
}

await runProgram(run);
