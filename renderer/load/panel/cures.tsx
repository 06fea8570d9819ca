import { useMemo } from 'preact/hooks';
import { type Cures, cureOverload } from '../../../geo/load/cure/cure.ts';
import { sayCure } from '../../../geo/load/cure/say-cure.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { decidingOf, sayPlate } from '../../../geo/load/weigh/say-plates.ts';
import { weigh } from '../../../geo/load/weigh/weigh.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { clip } from '../../drive/words.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change } from '../state/state.ts';

/** More would hold up the hand with a long list; a smaller set may then be missed, and it is said. */
const TRIALS = 60_000;

/** The fewest moves that bring everything within its limits, each to be done by one button. Nothing where nothing is over. */
export function CuresNow({
  card,
  items,
  over,
}: {
  card: VehicleCard;
  items: readonly LoadItem[];
  over: boolean;
}) {
  const found = useMemo(() => cureOverload(card, items, { trials: TRIALS }), [card, items]);
  if (!found.ok || (!over && found.value.cures.length === 0)) return null;
  return (
    <section class="load-cures" aria-label="What to do">
      <h3>What to do</h3>
      <CureList
        card={card}
        cures={found.value}
        say="Do this"
        none="Nothing listed can be moved, drained or left behind to cure it: another vehicle is needed, or a higher plate."
        take={(cured, did) => {
          change(cured, did);
          focusIfLost('load-undo');
        }}
      />
    </section>
  );
}

/** The ways out, the best first, each with what is left once it is done. */
export function CureList({
  card,
  cures: { cures, proved },
  say,
  none,
  take,
}: {
  card: VehicleCard;
  cures: Cures;
  say: string;
  /** where nothing helps */
  none: string;
  take(items: readonly LoadItem[], did: string): void;
}) {
  if (cures.length === 0)
    return (
      <p>
        {proved ? none : 'No way out was found among so many items: leave the heaviest behind and try again.'}
      </p>
    );
  return (
    <>
      <ol class="load-cure-list">
        {cures.map((cure) => {
          const said = clip(sayCure(cure), 300);
          const after = weigh(card, cure.items);
          return (
            <li key={said}>
              <p>
                {said.charAt(0).toUpperCase() + said.slice(1)}.{' '}
                {after.ok && <span class="soft">Then {sayPlate(decidingOf(after.value))}.</span>}
              </p>
              <button type="button" aria-label={`${say}: ${said}`} onClick={() => take(cure.items, said)}>
                {say}
              </button>
            </li>
          );
        })}
      </ol>
      {!proved && <p class="small soft">The list is long: there may be a way with fewer steps.</p>}
    </>
  );
}
