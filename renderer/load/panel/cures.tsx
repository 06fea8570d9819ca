import { useEffect, useMemo, useState } from 'preact/hooks';
import {
  type Cure,
  type Cures,
  cureOverload,
  needsCure,
  TRIALS_AT_HAND,
} from '../../../geo/load/cure/cure.ts';
import { sayCure, sayCureUpper, sayNoCure } from '../../../geo/load/cure/say-cure.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { onTheWay, worstOnTheWay } from '../../../geo/load/tanks/on-the-way.ts';
import { WHEN } from '../../../geo/load/tanks/say-tanks.ts';
import type { LoadCard } from '../../../geo/load/weigh/load-card.ts';
import { sayOver, sayPlate } from '../../../geo/load/weigh/say-plates.ts';
import { decidingOf } from '../../../geo/load/weigh/sums.ts';
import { clip } from '../../../geo/units/text.ts';
import { settings } from '../../state/kept.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change } from '../state/state.ts';

/** So long after a change the ways out are looked for: typing goes first. */
const REST_MS = 350;

/**
 * The fewest moves that bring everything within its limits with the margin asked for, each to be done by one button; for
 * a load that is over later alone, as the tanks fill and empty, in words. Nothing where nothing is over. Looked for once
 * the hand rests; until then the buttons wait.
 */
export function CuresNow({ card, items }: { card: LoadCard; items: readonly LoadItem[] }) {
  const { loadMarginKg: marginKg } = settings.value;
  const asked = useMemo(() => ({ card, items, marginKg }), [card, items, marginKg]);
  const [answer, setAnswer] = useState<{ readonly to: typeof asked; readonly cures: Cures } | undefined>();
  const over = useMemo(() => needsCure(card, items), [card, items]);
  const later = useMemo(() => (over ? undefined : worstOnTheWay(onTheWay(card, items))), [over, card, items]);
  const needed = over || later !== undefined;
  useEffect(() => {
    if (!needed) return undefined;
    const timer = setTimeout(() => {
      const found = cureOverload(card, later?.items ?? items, { trials: TRIALS_AT_HAND, marginKg });
      setAnswer(found.ok ? { to: asked, cures: found.value } : undefined);
    }, REST_MS);
    return () => clearTimeout(timer);
  }, [asked, needed]);
  if (!needed || !answer?.cures.needed) return null;
  if (later)
    return (
      <section class="load-cures" aria-label="What to do before you leave">
        <h3>What to do before you leave</h3>
        <p>
          Later, {WHEN[later.kind]}: {sayOver(later.result)}. So before that:
        </p>
        <CureList cures={answer.cures} none={sayNoCure(answer.cures)} />
      </section>
    );
  return (
    <section class="load-cures" aria-label="What to do">
      <h3>What to do</h3>
      <CureList
        cures={answer.cures}
        say="Do this"
        none={sayNoCure(answer.cures)}
        waiting={answer.to !== asked}
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
  /** what its button says; without one a way out is told alone */
  readonly say?: string;
  /** where nothing helps */
  readonly none: string;
  /** they answer what was aboard before the last change */
  readonly waiting?: boolean;
  take?(items: readonly LoadItem[], did: string): void;
}

/** The ways out, the best first, each with what is left once it is done. */
export function CureList({ cures: { cures, proved }, none, ...button }: Props) {
  if (cures.length === 0) return <p>{none}</p>;
  return (
    <>
      <ol class="load-cure-list">
        {cures.map((cure) => (
          <WayOut key={sayCure(cure)} cure={cure} {...button} />
        ))}
      </ol>
      {!proved && <p class="small soft">The list is long: there may be a way with fewer steps.</p>}
    </>
  );
}

function WayOut({
  cure,
  say = '',
  waiting = false,
  take,
}: Pick<Props, 'say' | 'waiting' | 'take'> & { cure: Cure }) {
  const said = clip(sayCure(cure), 300);
  return (
    <li>
      <p>
        {clip(sayCureUpper(cure), 300)}.{' '}
        {cure.after && <span class="soft">Then {sayPlate(decidingOf(cure.after))}.</span>}
      </p>
      {take && (
        <button
          type="button"
          disabled={waiting}
          aria-label={`${say}: ${said}`}
          onClick={() => take(cure.items, said)}
        >
          {say}
        </button>
      )}
    </li>
  );
}
