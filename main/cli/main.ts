import { PROGRAM } from '../version.ts';
import { checkCommand } from './check-command.ts';
import { HELP } from './help.ts';
import { loadCommand } from './load-command.ts';
import { swingCommand } from './swing-command.ts';
import { type Terminal, thisTerminal } from './terminal.ts';

const COMMANDS: Readonly<Record<string, (words: readonly string[], terminal: Terminal) => Promise<number>>> =
  {
    check: checkCommand,
    load: loadCommand,
    swing: swingCommand,
  };

/** Runs the command named by the first word. @returns the exit code */
export async function run(words: readonly string[], terminal: Terminal): Promise<number> {
  const [name, ...rest] = words;
  if (name === '--help' || name === '-h' || (name !== undefined && rest.includes('--help'))) {
    terminal.out(HELP);
    return 0;
  }
  if (name === '--version') {
    terminal.out(`${PROGRAM}\n`);
    return 0;
  }
  const command = name === undefined ? undefined : Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
  if (!command) {
    const said = name === undefined ? 'No command given.' : `There is no command '${name}'.`;
    terminal.complain(`${said} There is: ${Object.keys(COMMANDS).join(', ')}. See 'lanegauge --help'.`);
    return 2;
  }
  return command(rest, terminal);
}

process.exitCode = await run(process.argv.slice(2), thisTerminal());
