import { fail, ok, type Result } from '../../../geo/result.ts';
import { askMeant } from '../../../geo/units/slips.ts';
import { pathFrom } from '../read-words.ts';

export interface StartArguments {
  /** a drive or map to open */
  readonly file?: string;
  /** print the sample's check and end, without a window */
  readonly once: boolean;
  /** say what may stand here, and end */
  readonly help: boolean;
}

/** Reads the words after `npm start --`. */
export function readStartArguments(words: readonly string[], folder: string): Result<StartArguments> {
  if (words.includes('--help') || words.includes('-h')) return ok({ once: false, help: true });
  const option = words.find((word) => word.startsWith('-') && word !== '--once');
  if (option !== undefined)
    return fail(
      'unknown-option',
      `There is no option ${option}${askMeant(option, ['--once', '--help'], (word) => word)}. Write 'npm start', or 'npm start -- FILE.gpx'; 'npm start -- --help' lists what it takes.`,
    );
  const [file, ...more] = words.filter((word) => word !== '--once');
  if (more.length > 0)
    return fail(
      'too-many',
      `One file at a time, and ${more.length + 1} are named: write 'npm start -- FILE.gpx'.`,
    );
  if (file !== undefined && words.includes('--once'))
    return fail('once', '--once prints the check of the sample drive and takes no file.');
  return ok({
    once: words.includes('--once'),
    help: false,
    ...(file === undefined ? {} : { file: pathFrom(folder, file) }),
  });
}
