import { dayInWords } from '../../../geo/clock/print-dates.ts';
import { BIN_DAYS } from '../../../geo/library/bin.ts';
import { clip } from '../../../geo/units/text.ts';
import { change } from '../state/work.ts';
import { bin } from '../state/yard.ts';

const KIND_WORD = { drive: 'drive', vehicle: 'vehicle', note: 'local note' } as const;

/** What was removed, and can be had back. */
export function BinList() {
  return (
    <>
      <p class="small soft">What is removed can be had back for {BIN_DAYS} days.</p>
      {bin.value.length === 0 && <p>Nothing lies in the bin.</p>}
      <ul class="yard-list">
        {bin.value.map(({ id, kind, name, deleted }) => (
          <li key={id}>
            <span>
              <bdi>{clip(name, 80)}</bdi>
              <br />
              <span class="small soft">
                {KIND_WORD[kind]}
                {deleted !== '' && `, removed ${dayInWords(deleted.slice(0, 10))}`}
              </span>
            </span>
            <button type="button" onClick={() => void change('restoreItem', { id })}>
              Have back<span class="unseen">: {clip(name, 80)}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
