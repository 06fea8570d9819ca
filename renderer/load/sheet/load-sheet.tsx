import { largest } from '../../../geo/lists.ts';
import { lawNotes, sayLawNote } from '../../../geo/load/doubts/law-notes.ts';
import type { DoubtedLoad } from '../../../geo/load/doubts/load-with-doubts.ts';
import { sayDoubt } from '../../../geo/load/doubts/say-doubt.ts';
import type { LoadItem } from '../../../geo/load/list/load-list.ts';
import { headlineOf, LOAD_CAUTION } from '../../../geo/load/weigh/say-plates.ts';
import { sizeIn } from '../../../geo/units/in-units.ts';
import { printKg } from '../../../geo/units/print.ts';
import { clip } from '../../../geo/units/text.ts';
import type { VehicleCard } from '../../../geo/vehicle/card.ts';
import { sayEmptyWeight } from '../../../geo/vehicle/say-empty-weight.ts';
import { settings } from '../../state/kept.ts';
import { aboard } from '../../state/loads.ts';
import { PlateBars } from '../drawing/bars.tsx';
import { StillElevation } from '../drawing/elevation.tsx';
import { flagsOf, layOut } from '../drawing/layout.ts';
import { weighed } from '../state/state.ts';
import { type Fit, fitOf } from './fit.ts';
import { SheetFigures } from './sheet-figures.tsx';
import { SheetItems } from './sheet-items.tsx';

const WIDE_PX = 690;

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
  // that a plate is exceeded stands in the headline
  const doubts = result.doubts
    .filter(({ kind }) => kind !== 'over plate')
    .map((doubt) => sayDoubt(doubt, settings.value.units));
  const fit = fitOf(items.length, doubts.length);
  return (
    <article class="load-sheet" aria-hidden="true">
      <Head card={card} />
      <p class="load-sheet-verdict">
        {headlineOf(result, { doubtful: doubts.length > 0, marginKg: settings.value.loadMarginKg })}
      </p>
      <Drawing card={card} items={items} result={result} fit={fit} />
      <SheetFigures result={result} />
      <SheetItems card={card} items={items} fit={fit} />
      <Notes card={card} doubts={doubts} fit={fit} />
      <Signed />
    </article>
  );
}

function Head({ card }: { card: VehicleCard }) {
  const { grossKg, axleKg, wheelbaseM, runningOrder: empty } = card;
  return (
    <header>
      <h1>Load sheet</h1>
      <p>
        <b>
          <bdi>{clip(card.name, 80)}</bdi>
        </b>
        {`, plated at ${printKg(grossKg)}, front axle ${printKg(axleKg.front)}, rear axle ${printKg(axleKg.rear)}; wheelbase ${sizeIn(settings.value.units, wheelbaseM, 'nearest')}.`}
        {empty && ` Empty weight ${sayEmptyWeight(empty)}.`}
      </p>
    </header>
  );
}

interface DrawingProps {
  readonly card: VehicleCard;
  readonly items: readonly LoadItem[];
  readonly result: DoubtedLoad;
  readonly fit: Fit;
}

/** How high the body may be, pixels. */
const BODY_PX: Readonly<Record<Fit, number>> = { easy: 140, long: 110, longest: 90 };

function Drawing({ card, items, result, fit }: DrawingProps) {
  const bodyPx = BODY_PX[fit];
  const flags = fit === 'easy' ? flagsOf(card, layOut(card, WIDE_PX, bodyPx, 0).pxPerM) : [];
  const at = layOut(card, WIDE_PX, bodyPx, Math.max(0, largest(flags.map(({ row }) => row + 1))));
  return (
    <figure>
      <StillElevation card={card} items={items} result={result} at={at} flags={flags} />
      <PlateBars result={result} at={{ widthPx: WIDE_PX, x: at.x, wheelbaseM: card.wheelbaseM }} />
    </figure>
  );
}

function Notes({ card, doubts, fit }: { card: VehicleCard; doubts: readonly string[]; fit: Fit }) {
  const most = fit === 'longest' ? DOUBTS_LONGEST : DOUBTS;
  const licence = fit === 'easy' ? lawNotes(card).filter(({ about }) => about === 'licence') : [];
  return (
    <div class="load-sheet-notes">
      {doubts.slice(0, most).map((each) => (
        <p key={each}>{clip(each, 240)}</p>
      ))}
      {doubts.length > most && (
        <p>
          <b>{doubts.length - most} more points to check; the screen names them.</b>
        </p>
      )}
      {licence.map((note) => (
        <p key={note.says}>{sayLawNote(note)}</p>
      ))}
      <p>
        <b>{LOAD_CAUTION}</b> Follow local rules.
      </p>
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
