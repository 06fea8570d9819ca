import { lawNotes } from '../../../geo/load/doubts/law-notes.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { xField } from '../../../geo/load/list/read-entries.ts';
import type { LoadResult } from '../../../geo/load/result.ts';
import { LIMIT_NAME, LOAD_CAUTION } from '../../../geo/load/say-load.ts';
import { axleShare } from '../../../geo/load/weigh/axle-loads.ts';
import { bareKg, decidingOf, sayPlate, sumsOf } from '../../../geo/load/weigh/say-plates.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { clip } from '../../drive/words.ts';
import { aboard } from '../../state/loads.ts';
import { PlateBars } from '../drawing/bars.tsx';
import { StillElevation } from '../drawing/elevation.tsx';
import { flagsOf, layOut } from '../drawing/layout.ts';
import { doubtsOf } from '../panel/notes.tsx';
import { sayRunningOrder } from '../running-order.ts';
import { weighed } from '../state/state.ts';

const WIDE_PX = 690;
/** From so many items and sentences on, the table stands in two columns of small print. */
const LONG = 10;
/** From so many on in smaller print still. */
const LONGEST = 36;

/** What is doubtful, so many sentences of it; beside a very long list, so many: the rest is counted, for the page is one. */
const DOUBTS = 4;
const DOUBTS_LONGEST = 2;

/** One page of A4 that host and hirer sign: what is aboard, each axle against its plate, and room for the weighbridge. */
export function LoadSheet({ card }: { card: VehicleCard }) {
  const found = weighed.value;
  const items = aboard.value;
  if (found?.ok === false)
    return (
      <article class="load-sheet" aria-hidden="true">
        <h1>Load sheet</h1>
        <p class="load-sheet-verdict">Nothing can be proved. {found.error.message}</p>
      </article>
    );
  if (!found) return null;
  const result = found.value;
  const doubts = doubtsOf(result);
  const saidMost = items.length > LONGEST ? DOUBTS_LONGEST : DOUBTS;
  const long = items.length + doubts.length > LONG;
  return (
    <article class="load-sheet" aria-hidden="true">
      <header>
        <h1>Load sheet</h1>
        <p>
          <b>
            <bdi>{clip(card.name, 80)}</bdi>
          </b>
          , plated at {bareKg(card.grossKg)} kg, front axle {bareKg(card.axleKg.front)} kg, rear axle{' '}
          {bareKg(card.axleKg.rear)} kg; wheelbase {card.wheelbaseM.toFixed(2)} m. Running order
          {card.runningOrder ? ` ${sayRunningOrder(card.runningOrder)}` : ''}.
        </p>
      </header>
      <p class="load-sheet-verdict">
        {result.over.length > 0
          ? `OVER as listed: ${sumsOf(result)
              .filter(({ limit }) => result.over.includes(limit))
              .map(sayPlate)
              .join(', ')}. It must not leave like this.`
          : `Within its plates as listed: ${sayPlate(decidingOf(result))}.${doubts.length > 0 ? ' Mind what is said below.' : ''}`}
      </p>
      <Drawing card={card} items={items} result={result} low={long} />
      <Figures result={result} />
      <Items card={card} items={items} long={long} />
      <div class="load-sheet-notes">
        {doubts.slice(0, saidMost).map((each) => (
          <p key={each}>{clip(each, 240)}</p>
        ))}
        {doubts.length > saidMost && (
          <p>
            <b>{doubts.length - saidMost} more to mind; the screen names them.</b>
          </p>
        )}
        {!long &&
          lawNotes(card)
            .slice(0, 2)
            .map(({ says, source }) => (
              <p key={says}>
                {says} ({source})
              </p>
            ))}
        <p>
          <b>{LOAD_CAUTION}</b> Follow local rules.
        </p>
      </div>
      <Signed />
    </article>
  );
}

function Drawing({
  card,
  items,
  result,
  low,
}: {
  card: VehicleCard;
  items: readonly LoadItem[];
  result: LoadResult;
  low: boolean;
}) {
  const bodyPx = items.length > LONGEST ? 90 : low ? 110 : 140;
  const flags = low ? [] : flagsOf(card, layOut(card, WIDE_PX, bodyPx, 0).pxPerM);
  const at = layOut(card, WIDE_PX, bodyPx, Math.max(0, ...flags.map(({ row }) => row + 1)));
  return (
    <figure>
      <StillElevation card={card} items={items} result={result} at={at} flags={flags} />
      <PlateBars result={result} at={{ widthPx: WIDE_PX, x: at.x, wheelbaseM: card.wheelbaseM }} />
    </figure>
  );
}

/** The plates, what is worked out, and empty boxes for what the weighbridge shows. */
function Figures({ result }: { result: LoadResult }) {
  return (
    <table class="load-sheet-figures">
      <thead>
        <tr>
          <th scope="col">kg</th>
          <th scope="col">plate</th>
          <th scope="col">as listed</th>
          <th scope="col">spare</th>
          <th scope="col">as weighed</th>
        </tr>
      </thead>
      <tbody>
        {sumsOf(result).map(({ limit, plateKg, loadKg, spareKg, over }) => (
          <tr key={limit}>
            <th scope="row">{LIMIT_NAME[limit]}</th>
            <td>{bareKg(plateKg, 'down')}</td>
            <td>{bareKg(loadKg, 'up')}</td>
            <td>
              {bareKg(spareKg, 'down')}
              {over ? ' over' : ''}
            </td>
            <td class="load-sheet-box" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Items({ card, items, long }: { card: VehicleCard; items: readonly LoadItem[]; long: boolean }) {
  const running = card.runningOrder;
  return (
    <div
      class={`load-sheet-items${long ? ' load-sheet-items-long' : ''}${items.length > LONGEST ? ' load-sheet-items-longest' : ''}`}
    >
      <p class="load-sheet-head">
        <span>Aboard, metres behind {long ? '' : 'the '}front axle</span>
        <span>kg</span>
        <span>front</span>
        <span>rear</span>
      </p>
      {running && (
        <p>
          <span>Running order</span>
          <span>{bareKg(running.frontKg + running.rearKg)}</span>
          <span>{bareKg(running.frontKg)}</span>
          <span>{bareKg(running.rearKg)}</span>
        </p>
      )}
      {items.map((item, i) => {
        const share = axleShare(item, card.wheelbaseM);
        return (
          <p key={String(i)}>
            <span>
              <bdi>{clip(item.name, long ? 26 : 60)}</bdi>
              <i>
                {' '}
                {item.place === undefined || long ? '' : `${clip(item.place, 30)}, `}
                {xField(item.xM)} m
              </i>
            </span>
            <span>{bareKg(item.massKg)}</span>
            <span>{bareKg(share.frontKg)}</span>
            <span>{bareKg(share.rearKg)}</span>
          </p>
        );
      })}
    </div>
  );
}

/** Ruled by hand: a date of the computer proves nothing. */
function Signed() {
  return (
    <div class="load-sheet-signed">
      <p>Date and time</p>
      <p>Weighbridge, ticket</p>
      <p>Host, name</p>
      <p>Host, signature</p>
      <p>Hirer, name</p>
      <p>Hirer, signature</p>
    </div>
  );
}
