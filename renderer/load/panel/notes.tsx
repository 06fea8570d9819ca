import { lawNotes } from '../../../geo/load/doubts/law-notes.ts';
import type { LoadResult } from '../../../geo/load/result.ts';
import { sayPlate, sumsOf } from '../../../geo/load/weigh/say-plates.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { clip } from '../../drive/words.ts';

/** What is doubtful in the list. That a plate is exceeded stands above already. */
export function Doubts({ result }: { result: LoadResult }) {
  const said = doubtsOf(result);
  if (said.length === 0) return null;
  return (
    <section aria-label="To mind">
      <h3>To mind</h3>
      <ul class="load-doubts">
        {said.map((each) => (
          <li key={each}>
            <bdi>{clip(each, 400)}</bdi>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What stands in doubt besides the plates that are exceeded. */
export function doubtsOf(result: LoadResult): string[] {
  return result.warnings.filter((each) => !/ is over its plate by /.test(each));
}

/** What was counted, and what the plate means in law; quiet, with its sources. */
export function LoadNotes({ card, result }: { card: VehicleCard; result: LoadResult }) {
  return (
    <section class="load-notes small soft" aria-label="What was counted, and the law">
      {result.notes.map((each) => (
        <p key={each}>{each}</p>
      ))}
      <h3>Licence and law, by the plate</h3>
      <p>No verdicts: local rules decide.</p>
      {lawNotes(card).map(({ says, source }) => (
        <p key={says}>
          {says} ({source})
        </p>
      ))}
    </section>
  );
}

/** Everything over, in one sentence for a reader that does not see the bars. */
export function sayAll(result: LoadResult): string {
  return `${sumsOf(result).map(sayPlate).join(', ')}.`;
}
