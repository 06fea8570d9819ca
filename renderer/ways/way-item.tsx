import type { WayRound } from '../../geo/report/way-round.ts';
import { sayBy, sayExtra, sayLeaves, sayTightest, sayWayItself } from '../../geo/report/ways/say-way.ts';
import { capital } from '../../geo/units/text.ts';
import { takeWays } from '../actions/take-way.ts';
import { settings } from '../state/kept.ts';
import { lookedAt, raisedWays } from '../state/ways.ts';
import { WaySample } from './way-sample.tsx';
import { WholeDrive } from './whole-drive.tsx';

interface Props {
  readonly way: WayRound;
  /** its place among the ways found */
  readonly index: number;
  /** what it goes past */
  readonly past: string;
}

/** One way: what it costs, what is on it, and the button that takes it. Pointer or focus on it raises it on map and strip. */
export function WayItem({ way, index, past }: Props) {
  const units = settings.value.units;
  const raise = () => {
    lookedAt.value = index;
  };
  const tightest = sayTightest(way, units);
  const cost = sayExtra(way, units);
  const raised = raisedWays.value.includes(index);
  return (
    <li
      class={raised ? 'way way-raised' : 'way'}
      data-way={index + 1}
      onPointerEnter={raise}
      onFocusIn={raise}
    >
      <WaySample number={index + 1} />
      <p class="way-says">
        <b>{capital(cost)}</b>
        <WholeDrive ways={[way]} />
        <span class="small soft">
          {sayWayItself(way)}
          {tightest !== undefined && ` Tightest: ${tightest}.`}
        </span>
        <span class="small soft">
          {sayLeaves(way, units)}, {sayBy(way)}
        </span>
      </p>
      <button type="button" onClick={() => takeWays([index], `Past ${past}: ${cost}.`)}>
        Take it
        <span class="unseen">
          : way {index + 1}, {cost}
        </span>
      </button>
    </li>
  );
}
