import { METRES_PER_MILE } from '../../../geo/units/exact.ts';
import { settings } from '../../state/kept.ts';
import { arrangement } from '../state/yard.ts';

/** Drives no shorter and no longer than these, in the units chosen. */
export function Lengths() {
  const miles = settings.value.units === 'imperial';
  const eachM = miles ? METRES_PER_MILE : 1000;
  const { shortestM, longestM } = arrangement.value;
  return (
    <span class="yard-lengths">
      <Length
        say="From"
        valueM={shortestM}
        eachM={eachM}
        change={(m) => {
          arrangement.value = { ...arrangement.peek(), shortestM: m };
        }}
      />
      <Length
        say={`to, ${miles ? 'miles' : 'km'}`}
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
  readonly valueM: number | undefined;
  readonly eachM: number;
  change(m: number | undefined): void;
}

function Length({ say, valueM, eachM, change }: LengthProps) {
  return (
    <label>
      <span class="small soft">{say}</span>
      <input
        type="number"
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
