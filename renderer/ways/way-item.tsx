import { LEVEL_WORD } from '../../geo/report/level.ts';
import {
  sayBy,
  sayExtra,
  sayLeaves,
  sayOnWay,
  sayStillBarred,
  sayTightest,
} from '../../geo/report/say-way.ts';
import type { WayRound } from '../../geo/report/way-round.ts';
import { capital } from '../../geo/units/text.ts';
import { takeWays } from '../actions/take-way.ts';
import { VerdictMark } from '../look/level-mark.tsx';
import { findings } from '../state/check.ts';
import { settings } from '../state/kept.ts';
import { lookedAt, raisedWays } from '../state/ways.ts';
import { WaySample } from './way-sample.tsx';

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
  const still = sayStillBarred(way, findings.value, units);
  const by = sayBy(way);
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
        <span class="small way-verdict">
          <VerdictMark verdict={way.verdict} size={16} />
          <span>
            <b class={`level-${way.verdict}`}>{LEVEL_WORD[way.verdict]}</b>
            {sayOnWay(way)}
          </span>
        </span>
        {still !== undefined && <b class="small level-barred">{still}</b>}
        <span class="small soft">
          {sayLeaves(way, units)}
          {by !== undefined && `, ${by}`}
        </span>
        {tightest !== undefined && <span class="small soft">Tightest: {tightest}</span>}
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
