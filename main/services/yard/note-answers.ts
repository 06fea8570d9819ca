import { readFindingId } from '../../../geo/notes/finding-id.ts';
import type { NoteFields } from '../../../geo/notes/note.ts';
import { fail, ok, type Result } from '../../../geo/result.ts';
import { quote } from '../../../geo/units/text.ts';
import type { Library } from '../library/library.ts';
import { toldFinding } from './grid/told-finding.ts';
import { keptFolder } from './yard-of.ts';

/** The finding that a note answers. */
interface Answered {
  readonly answers: NonNullable<NoteFields['answers']>;
  /** a sentence where no check can bear it out */
  readonly say?: string;
}

const TAKE_IT = "Take it from 'lanegauge check DRIVE.gpx --vehicle CARD --json'.";

/** The finding that was typed after `--answers`: one that a check of a drive of the library has told. */
export async function readAnswers(
  typed: string,
  library: Library,
  dataFolder: string,
): Promise<Result<Answered>> {
  const id = readFindingId(typed);
  if (id === undefined)
    return fail(
      'usage',
      `--answers ${quote(typed)} is not the id of a finding, such as height:w123f. ${TAKE_IT}`,
    );
  const drives = library.list('drive').map((drive) => drive.id);
  const told = await toldFinding(keptFolder(dataFolder), drives, typed);
  if (told.finding === undefined ? id.isGuessed : told.finding.wants === 'route')
    return fail(
      'usage',
      `--answers ${quote(typed)} is about which road is driven: a denser file alone settles that, no note does. Record the drive, or plan it with the points closer together; leave out --answers to keep the note by itself.`,
    );
  if (told.finding) {
    const { subject, kind } = told.finding;
    return ok({ answers: { finding: typed, subject, kind } });
  }
  if (told.isChecked)
    return fail(
      'usage',
      `--answers ${quote(typed)}: no drive of the library has this finding, as last checked. ${TAKE_IT} A drive that is not in the library comes there with 'lanegauge yard add', and is checked with 'lanegauge yard grid'.`,
    );
  return ok({
    answers: { finding: typed, subject: id.subject },
    say: 'No drive of the library has this finding so far.',
  });
}
