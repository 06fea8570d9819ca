import { useMemo } from 'preact/hooks';
import { type Cure, type Cures, cureOverload, TRIALS_AT_HAND } from '../../../geo/load/cure/cure.ts';
import { sayCure, sayCureUpper, sayNoCure } from '../../../geo/load/cure/say-cure.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { sayPlate } from '../../../geo/load/weigh/say-plates.ts';
import { decidingOf } from '../../../geo/load/weigh/sums.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change } from '../state/state.ts';

/** The fewest moves that bring everything within its limits, each to be done by one button. Nothing where nothing is over. */
export function CuresNow({ card, items }: { card: VehicleCard; items: readonly LoadItem[] }) {
  const found = useMemo(() => cureOverload(card, items, { trials: TRIALS_AT_HAND }), [card, items]);
  if (!found.ok || !found.value.needed) return null;
  return (
    <section class="load-cures" aria-label="What to do">
      <h3>What to do</h3>
      <CureList
        cures={found.value}
        say="Do this"
        none={sayNoCure(found.value)}
        take={(cured, did) => {
          change(cured, did);
          focusIfLost('load-undo');
        }}
      />
    </section>
  );
}

interface Props {
  readonly cures: Cures;
  readonly say: string;
  /** where nothing helps */
  readonly none: string;
  take(items: readonly LoadItem[], did: string): void;
}

/** The ways out, the best first, each with what is left once it is done. */
export function CureList({ cures: { cures, proved }, say, none, take }: Props) {
  if (cures.length === 0) return <p>{none}</p>;
  return (
    <>
      <ol class="load-cure-list">
        {cures.map((cure) => (
          <WayOut key={sayCure(cure)} cure={cure} say={say} take={take} />
        ))}
      </ol>
      {!proved && <p class="small soft">The list is long: there may be a way with fewer steps.</p>}
    </>
  );
}

function WayOut({ cure, say, take }: Pick<Props, 'say' | 'take'> & { cure: Cure }) {
  const said = clip(sayCure(cure), 300);
  return (
    <li>
      <p>
        {clip(sayCureUpper(cure), 300)}.{' '}
        {cure.after && <span class="soft">Then {sayPlate(decidingOf(cure.after))}.</span>}
      </p>
      <button type="button" aria-label={`${say}: ${said}`} onClick={() => take(cure.items, said)}>
        {say}
      </button>
    </li>
  );
}
