import { lawNotes, sayLawNote } from '../../../geo/load/doubts/law-notes.ts';
import type { DoubtedLoad } from '../../../geo/load/doubts/load-with-doubts.ts';
import { sayCounted, sayDoubt } from '../../../geo/load/doubts/say-doubt.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { settings } from '../../state/kept.ts';

/** What is doubtful in the list. That a plate is exceeded stands above already. */
export function Doubts({ result }: { result: DoubtedLoad }) {
  const said = result.doubts
    .filter(({ kind }) => kind !== 'over plate')
    .map((doubt) => sayDoubt(doubt, settings.value.units));
  if (said.length === 0) return null;
  return (
    <section aria-label="Check these">
      <h3>Check these</h3>
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

/** What was counted, and what the plate means in law; quiet. Sources stand on the page about the rules. */
export function LoadNotes({ card, result }: { card: VehicleCard; result: DoubtedLoad }) {
  // that it is an estimate stands above already, with what makes it better
  const counted = result.counted.filter(({ kind }) => kind !== 'estimated');
  return (
    <section class="load-notes small soft" aria-label="What was counted, and the law">
      {counted.map(sayCounted).map((each) => (
        <p key={each}>{each}</p>
      ))}
      <h3>Licence and law, by the plate</h3>
      <p>No verdicts: local rules decide.</p>
      {lawNotes(card).map((note) => (
        <p key={note.says}>{sayLawNote(note)}</p>
      ))}
    </section>
  );
}
