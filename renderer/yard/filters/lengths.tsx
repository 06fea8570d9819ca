import { METRES_PER_MILE } from '../../../geo/units/exact.ts';
import { settings } from '../../state/kept.ts';
import { arrangement } from '../state/yard.ts';

/** Drives no shorter and no longer than these, in the units chosen. */
export function Lengths() {
  const miles = settings.value.units === 'imperial';
  const unit = miles ? 'miles' : 'km';
  const eachM = miles ? METRES_PER_MILE : 1000;
  const { shortestM, longestM } = arrangement.value;
  return (
    <span class="yard-lengths">
      <Length
        say={`From, ${unit}`}
        meaning={`No shorter than, ${unit}`}
        valueM={shortestM}
        eachM={eachM}
        change={(m) => {
          arrangement.value = { ...arrangement.peek(), shortestM: m };
        }}
      />
      <Length
        say="to"
        meaning={`No longer than, ${unit}`}
        valueM={longestM}
        eachM={eachM}
        change={(m) => {
          arrangement.value = { ...arrangement.peek(), longestM: m };
        }}
      />
    </span>
  );
}

interface LengthProps {
  readonly say: string;
  /** for whoever does not see that the two stand together */
  readonly meaning: string;
  readonly valueM: number | undefined;
  readonly eachM: number;
  change(m: number | undefined): void;
}

function Length({ say, meaning, valueM, eachM, change }: LengthProps) {
  return (
    <label>
      <span class="small soft">{say}</span>
      <input
        type="number"
        aria-label={meaning}
        class="yard-number"
        min={0}
        step="any"
        value={valueM === undefined ? '' : Number((valueM / eachM).toFixed(1))}
        onInput={({ currentTarget: { valueAsNumber: typed } }) =>
          change(typed > 0 ? typed * eachM : undefined)
        }
      />
    </label>
  );
}
