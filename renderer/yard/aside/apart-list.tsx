import { clip } from '../../../geo/units/text.ts';
import type { Apart } from '../../../main/contract/yard/yard.ts';
import { apart } from '../state/yard.ts';
import { Versions } from './versions.tsx';

const KIND_WORD: Readonly<Record<Apart['kind'], string>> = {
  drive: 'drive',
  vehicle: 'vehicle',
  load: 'what is aboard',
  note: 'local note',
};

/** All that was changed in two places at once: until somebody chooses, the first version stands in. */
export function ApartList() {
  const all = apart.value;
  if (all.length === 0) return <p>Everything has one version.</p>;
  return (
    <>
      <p class="small soft">
        Until one is kept the first counts; of figures in local notes the lower. The other stays in the
        library’s history.
      </p>
      {all.map((each) => (
        <div key={each.id} class="yard-apart">
          <h4>
            <bdi>{clip(each.name, 80)}</bdi> <span class="small soft">{KIND_WORD[each.kind]}</span>
          </h4>
          <Versions of={each} />
        </div>
      ))}
    </>
  );
}
