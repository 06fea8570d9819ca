import { METRES_PER_MILE } from '../../../geo/units/exact.ts';
import { clip } from '../../../geo/units/text.ts';
import { type ChosenPlace, PlaceField } from '../../plan/place-field.tsx';
import { settings } from '../../state/kept.ts';
import { forgetNear, lookNear, near } from '../state/near.ts';

const USUAL = 5;
const MOST = 200;

/** Drives that come near a place: one by name, from the maps at hand, or by coordinates. */
export function NearField() {
  const asked = near.value;
  const miles = settings.value.units === 'imperial';
  const eachM = miles ? METRES_PER_MILE : 1000;
  if (asked === undefined)
    return (
      <PlaceField
        id="yard-near"
        label="Near"
        placeholder="place, or 54.1, 9.2"
        put={(place) => void lookNear(place, USUAL * eachM)}
      />
    );
  return (
    <span class="yard-near">
      <span class="small soft">Near</span> <bdi>{nameOf(asked.place)}</bdi>
      <label>
        <span class="small soft">within, {miles ? 'miles' : 'km'}</span>
        <input
          type="number"
          class="yard-number"
          min={0.1}
          max={MOST}
          step="any"
          value={Number((asked.radiusM / eachM).toFixed(1))}
          onChange={({ currentTarget: { valueAsNumber: typed } }) => {
            if (typed > 0 && typed <= MOST) void lookNear(asked.place, typed * eachM);
          }}
        />
      </label>
      <button type="button" class="quiet" onClick={forgetNear}>
        Anywhere
      </button>
      {asked.share !== undefined && (
        <span class="small soft" role="status">
          looking through the drives, {Math.round(asked.share * 100)} %
        </span>
      )}
    </span>
  );
}

function nameOf({ name, lat, lon }: ChosenPlace): string {
  return name === undefined ? `${lat.toFixed(4)}, ${lon.toFixed(4)}` : clip(name, 40);
}
