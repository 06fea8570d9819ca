import { given } from '../../../geo/given.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { putIn, type Spot, spotsOf, standsAt, tanksFor } from '../../../geo/load/places/spots.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { clip } from '../../drive/words.ts';

const GROUPS: readonly (readonly [Spot['what'], string])[] = [
  ['seat', 'Seats'],
  ['tank', 'Tanks'],
  ['locker', 'Lockers'],
  ['rack', 'Rack'],
];

/** The named places an item may stand at, and "at a distance" where it stands at none. */
export function PlaceChoice({
  id,
  label,
  item,
  card,
  put,
}: {
  id?: string;
  label?: string;
  item: LoadItem;
  card: VehicleCard;
  put(item: LoadItem): void;
}) {
  const spots = [...spotsOf(card), ...tanksFor(card, item as { name: string })];
  const now = spots.find((spot) =>
    spot.what === 'tank' ? item.place === spot.name : standsAt(item, spot, card),
  );
  return (
    <select
      {...given({ id })}
      {...given({ 'aria-label': label })}
      value={now?.name ?? ''}
      onChange={({ currentTarget }) => {
        const chosen = spots.find(({ name }) => name === currentTarget.value);
        const { place: _, ...loose } = item;
        put(chosen ? putIn(item, chosen) : loose);
      }}
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
