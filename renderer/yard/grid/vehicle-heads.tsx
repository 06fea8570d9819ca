import { largest } from '../../../geo/lists.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import type { YardVehicle } from '../../../main/contract/yard/yard.ts';
import { vehicles as fleet } from '../../state/kept.ts';
import { apartIds, arrangement } from '../state/yard.ts';
import type { Place } from './place.ts';

const [WIDTH, HEIGHT] = [76, 40];
/** Underside, wheel radius and top of the bonnet as most vans have them, metres; a drawing, no figure. */
const [UNDERSIDE_M, WHEEL_M, BONNET_M] = [0.4, 0.34, 1.1];

/** The columns' heads: each vehicle from its side, all at one scale, so that tall and long are seen before they are read. */
export function VehicleHeads({
  vehicles,
  place,
  from,
  to,
  cellPx,
}: {
  vehicles: readonly YardVehicle[];
  place: Place;
  /** which of them are drawn */
  from: number;
  to: number;
  cellPx: number;
}) {
  const cards = vehicles.map(({ vehicleId }) => fleet.value.find(({ id }) => id === vehicleId)?.card);
  const longM = largest(cards.map((card) => (card ? outerLengthM(card) : 1)));
  const highM = largest(cards.map((card) => card?.heightM ?? 1));
  const pxPerM = Math.min((WIDTH - 4) / longM, (HEIGHT - 3) / highM);
  return (
    <tr aria-rowindex={1} class="yard-heads">
      <th scope="col" aria-colindex={1} class="yard-corner small soft">
        <span data-place="-1,0" tabIndex={place.row === -1 && place.column === 0 ? 0 : -1}>
          Drive
        </span>
      </th>
      {vehicles.slice(from, to).map((vehicle, i) => (
        <Head
          key={vehicle.id}
          vehicle={vehicle}
          card={cards[from + i]}
          pxPerM={pxPerM}
          column={from + i + 1}
          awayPx={i === 0 ? from * cellPx : 0}
          isPlace={place.row === -1 && place.column === from + i + 1}
        />
      ))}
    </tr>
  );
}

function Head({
  vehicle: { id, name },
  card,
  pxPerM,
  column,
  awayPx,
  isPlace,
}: {
  vehicle: YardVehicle;
  card: VehicleCard | undefined;
  pxPerM: number;
  column: number;
  awayPx: number;
  isPlace: boolean;
}) {
  const asked = arrangement.value.vehicle === id;
  return (
    <th
      scope="col"
      aria-colindex={column + 1}
      class={asked ? 'yard-head yard-asked' : 'yard-head'}
      style={awayPx > 0 ? { marginLeft: `${awayPx}px` } : undefined}
    >
      <button
        type="button"
        data-place={`-1,${column}`}
        tabIndex={isPlace ? 0 : -1}
        aria-pressed={asked}
        title={`What can ${clip(name, 60)} take?`}
      >
        <svg
          width={WIDTH}
          height={HEIGHT}
          viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
          aria-hidden="true"
          class="yard-side"
        >
          {card && <Side card={card} pxPerM={pxPerM} />}
        </svg>
        <span class="yard-vehicle-name">
          <bdi>{clip(name, 60)}</bdi>
        </span>
        {apartIds.value.has(id) && <span class="small">two versions</span>}
      </button>
    </th>
  );
}

function outerLengthM({ lengthM, rack }: VehicleCard): number {
  return lengthM + (rack?.fitted ? rack.lengthM : 0);
}

/** Front to the left, wheels on the ground line. */
function Side({ card, pxPerM }: { card: VehicleCard; pxPerM: number }) {
  const { heightM, frontOverhangM, wheelbaseM, lengthM, rack } = card;
  const x = (m: number) => (m * pxPerM + (WIDTH - outerLengthM(card) * pxPerM) / 2).toFixed(1);
  const y = (m: number) => (HEIGHT - 1 - m * pxPerM).toFixed(1);
  const bonnet = Math.min(BONNET_M, heightM * 0.42);
  const cab = Math.min(frontOverhangM + 0.9, lengthM * 0.3);
  return (
    <g>
      <path
        class="yard-body"
        d={`M${x(0)} ${y(UNDERSIDE_M)}V${y(bonnet)}L${x(cab * 0.45)} ${y(bonnet + 0.15)}L${x(cab * 0.8)} ${y(heightM * 0.7)}L${x(cab * 0.7)} ${y(heightM)}H${x(lengthM)}V${y(UNDERSIDE_M)}Z`}
      />
      {rack?.fitted && (
        <path
          class="yard-rack"
          d={`M${x(lengthM)} ${y(UNDERSIDE_M + 0.4)}H${x(lengthM + rack.lengthM)}v${-0.6 * pxPerM}`}
        />
      )}
      {[frontOverhangM, frontOverhangM + wheelbaseM].map((m) => (
        <circle key={m} class="yard-wheel" cx={x(m)} cy={y(WHEEL_M)} r={WHEEL_M * pxPerM} />
      ))}
      <path class="yard-ground" d={`M0 ${HEIGHT - 0.5}H${WIDTH}`} />
    </g>
  );
}
