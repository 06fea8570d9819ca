import { given } from '../../../geo/given.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { putIn, type Spot, spotOf, spotsFor } from '../../../geo/load/places/spots.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';

const GROUPS: readonly (readonly [Spot['what'], string])[] = [
  ['seat', 'Seats'],
  ['tank', 'Tanks'],
  ['locker', 'Lockers'],
  ['rack', 'Rack'],
];

interface Props {
  readonly id?: string;
  readonly label?: string;
  readonly item: LoadItem;
  readonly card: VehicleCard;
  put(item: LoadItem): void;
}

/** The named places an item may stand at, and "at a distance" where it stands at none. */
export function PlaceChoice({ id, label, item, card, put }: Props) {
  const spots = spotsFor(card, item);
  return (
    <select
      {...given({ id, 'aria-label': label })}
      value={spotOf(card, item)?.name ?? ''}
      onChange={({ currentTarget }) =>
        put(
          putIn(
            item,
            spots.find(({ name }) => name === currentTarget.value),
          ),
        )
      }
    >
      <option value="">at a distance</option>
      {GROUPS.map(([what, title]) => {
        const group = spots.filter((spot) => spot.what === what);
        return group.length === 0 ? null : (
          <optgroup key={what} label={title}>
            {group.map(({ name, limitKg }) => (
              <option key={name} value={name}>
                {what === 'rack' ? 'Rack' : clip(name, 40)}
                {limitKg === undefined ? '' : `, at most ${limitKg} kg`}
              </option>
            ))}
          </optgroup>
        );
      })}
    </select>
  );
}
