import type { Finding } from '../../geo/report/report.ts';
import { noteFinding } from './begin.ts';

/** Writes down what the firm knows of the place of a finding. */
export function NoteButton({ finding }: { finding: Finding }) {
  return (
    <p>
      <button type="button" aria-haspopup="dialog" onClick={() => noteFinding(finding)}>
        {wordsFor(finding)}
      </button>
    </p>
  );
}

function wordsFor({ note, wants, subject }: Finding): string {
  if (note !== undefined) return 'Your note…';
  if (wants === 'permission') return 'We have leave…';
  const figure = subject === 'height' || subject === 'width' || subject === 'mass';
  return figure || wants === 'measure' ? 'I measured it…' : 'Note this place…';
}
