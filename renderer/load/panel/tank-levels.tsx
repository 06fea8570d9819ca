import { useId } from 'preact/hooks';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { setTank } from '../../../geo/load/places/in-tank.ts';
import { sayDensity, sayTank, tankText } from '../../../geo/load/tanks/say-tanks.ts';
import { GAUGE_L, type TankTold, tellTank } from '../../../geo/load/tanks/tell-tank.ts';
import { printLitres } from '../../../geo/units/print.ts';
import { clip } from '../../../geo/units/text.ts';
import type { Tank, VehicleCard } from '../../../geo/vehicle/card.ts';
import { inEmptyWeight, isWaste } from '../../../geo/vehicle/liquids.ts';
import { focusIfLost } from '../state/keep-focus.ts';
import { change, endStep } from '../state/state.ts';
import { DayStops } from './day-stops.tsx';

/** Each tank of the card with its level, the level at which something is reached, and what filling or emptying does. */
export function TankLevels({ card, items }: { card: VehicleCard; items: readonly LoadItem[] }) {
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
      <DayStops card={card} items={items} />
    </section>
  );
}

/** Sets a tank to so many litres. @param merging changes in a row under the same word are one step to undo */
type Fill = (litres: number, merging?: string) => void;

function TankLevel({ tank, card, items }: { tank: Tank; card: VehicleCard; items: readonly LoadItem[] }) {
  const id = useId();
  const { name, holds } = tank;
  const told = tellTank(card, items, tank);
  const fill: Fill = (litres, merging) =>
    change(setTank(card, items, tank, litres), `${clip(name, 40)}: ${printLitres(litres)}`, merging);
  const counted = inEmptyWeight(holds);
  return (
    <div class="load-tank-level">
      <label for={id}>
        {clip(name, 40)}{' '}
        <span class="small soft">
          {sayDensity(holds)}
          {counted === undefined ? '' : `; ${counted}`}
        </span>
      </label>
      <span class="slider-figure" aria-hidden="true">
        {tankText(told)}
      </span>
      <span class="load-level">
        <Slider id={id} tank={tank} told={told} fill={fill} />
        <LimitMark tank={tank} told={told} />
      </span>
      <span class="load-tank-does">
        <span id={`${id}-says`} class="small">
          {sayTank(told).join(' ')}
        </span>
        <FillButton
          tank={tank}
          told={told}
          fill={(litres) => {
            fill(litres);
            focusIfLost(id);
          }}
        />
      </span>
    </div>
  );
}

interface OfTank {
  readonly tank: Tank;
  readonly told: TankTold;
}

function Slider({ id, tank, told, fill }: OfTank & { id: string; fill: Fill }) {
  const { name, capacityL } = tank;
  return (
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
        fill(litres > capacityL - GAUGE_L ? capacityL : Math.round(litres), `tank ${name}`);
      }}
      onChange={endStep}
      onBlur={endStep}
    />
  );
}

/** Where on the slider something is reached. */
function LimitMark({ tank, told: { reach } }: OfTank) {
  if (reach?.kind !== 'reached at') return null;
  return (
    <svg class="load-level-limit" viewBox="0 0 100 1" preserveAspectRatio="none" aria-hidden="true">
      <path d={`M${(reach.litres / tank.capacityL) * 100} 0v1`} />
    </svg>
  );
}

function FillButton({ tank, told, fill }: OfTank & { fill(litres: number): void }) {
  const { name, holds, capacityL } = tank;
  const the = <span class="unseen"> the {clip(name, 40)}</span>;
  return isWaste(holds) ? (
    <button type="button" disabled={told.litres < GAUGE_L} onClick={() => fill(0)}>
      Empty{the}
    </button>
  ) : (
    <button type="button" disabled={told.litres > capacityL - GAUGE_L} onClick={() => fill(capacityL)}>
      Fill up{the}
    </button>
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
