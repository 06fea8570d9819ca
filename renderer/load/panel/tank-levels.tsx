import { useId } from 'preact/hooks';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { setTank } from '../../../geo/load/places/in-tank.ts';
import { onTheWay } from '../../../geo/load/tanks/on-the-way.ts';
import { tankText, tellTank } from '../../../geo/load/tanks/tell-tank.ts';
import { decidingOf, sayPlate } from '../../../geo/load/weigh/say-plates.ts';
import type { Tank, VehicleCard } from '../../../geo/vehicle/card.ts';
import { LIQUID_FACTS } from '../../../geo/vehicle/liquids.ts';
import { clip } from '../../drive/words.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change, endStep } from '../state/state.ts';

/** Each tank of the card with its level, the level at which something is reached, and what filling or emptying does. */
export function Tanks({ card, items }: { card: VehicleCard; items: readonly LoadItem[] }) {
  const tanks = card.tanks ?? [];
  if (tanks.length === 0)
    return (
      <p class="small soft">The card names no tanks: list water by the litre above, where its tank lies.</p>
    );
  return (
    <section class="load-tanks" aria-label="Tanks">
      <h3>Tanks</h3>
      {tanks.map((tank) => (
        <TankLevel key={tank.name} tank={tank} card={card} items={items} />
      ))}
      <OnTheWay card={card} items={items} />
    </section>
  );
}

/** What decides at each state of the tanks that the hire comes through. */
function OnTheWay({ card, items }: { card: VehicleCard; items: readonly LoadItem[] }) {
  const moments = onTheWay(card, items);
  if (moments.length === 0) return null;
  return (
    <>
      <h4>On the way</h4>
      <ul class="load-on-the-way small">
        {moments.map(({ when, result }) => {
          const decides = decidingOf(result);
          return (
            <li key={when}>
              {when}: <b class={decides.over ? 'level-barred' : ''}>{sayPlate(decides)}</b>
            </li>
          );
        })}
      </ul>
    </>
  );
}

function TankLevel({ tank, card, items }: { tank: Tank; card: VehicleCard; items: readonly LoadItem[] }) {
  const id = useId();
  const { name, holds, capacityL } = tank;
  const told = tellTank(card, items, tank);
  const facts = LIQUID_FACTS[holds];
  const fill = (litres: number, merging?: string) =>
    change(setTank(card, items, tank, litres), `${clip(name, 40)}: ${Math.round(litres)} l`, merging);
  const fillBy = (litres: number) => {
    fill(litres);
    focusIfLost(id);
  };
  const wasted = holds === 'waste-water' || holds === 'toilet';
  const inOrder =
    holds === 'fuel' ? '; 90 % in the running order' : holds === 'adblue' ? '; in the running order' : '';
  return (
    <div class="load-tank-level">
      <label for={id}>
        {clip(name, 40)}{' '}
        <span class="small soft">
          {facts.kgPerL.toFixed(2)} kg a litre{inOrder}
        </span>
      </label>
      <span class="slider-figure" aria-hidden="true">
        {tankText(told)}
      </span>
      <span class="load-level">
        <input
          id={id}
          type="range"
          min={0}
          max={capacityL}
          step="any"
          value={told.litres}
          aria-valuetext={tankText(told)}
          aria-describedby={`${id}-says`}
          onKeyDown={(event) => {
            const by = KEY_LITRES[event.key];
            if (by === undefined) return;
            event.preventDefault();
            fill(Math.min(capacityL, Math.max(0, Math.round(told.litres) + by)), `tank ${name}`);
          }}
          onInput={({ currentTarget }) => {
            const litres = Number(currentTarget.value);
            fill(litres > capacityL - 0.5 ? capacityL : Math.round(litres), `tank ${name}`);
          }}
          onChange={endStep}
          onBlur={endStep}
        />
        {told.limitL !== undefined && (
          <svg class="load-level-limit" viewBox="0 0 100 1" preserveAspectRatio="none" aria-hidden="true">
            <path d={`M${(told.limitL / capacityL) * 100} 0v1`} />
          </svg>
        )}
      </span>
      <span class="load-tank-does">
        <span id={`${id}-says`} class="small">
          {told.says.join(' ')}
        </span>
        {wasted ? (
          <button type="button" disabled={told.litres < 0.5} onClick={() => fillBy(0)}>
            Empty<span class="unseen"> the {clip(name, 40)}</span>
          </button>
        ) : (
          <button type="button" disabled={told.litres > capacityL - 0.5} onClick={() => fillBy(capacityL)}>
            Fill up<span class="unseen"> the {clip(name, 40)}</span>
          </button>
        )}
      </span>
    </div>
  );
}

const KEY_LITRES: Readonly<Record<string, number>> = {
  ArrowLeft: -1,
  ArrowDown: -1,
  ArrowRight: 1,
  ArrowUp: 1,
  PageDown: -10,
  PageUp: 10,
  Home: -10_000,
  End: 10_000,
};
