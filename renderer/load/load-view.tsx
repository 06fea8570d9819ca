import { clip } from '../../geo/units/text.ts';
import './drawing/drawing.css';
import './ledger/ledger.css';
import './panel/panel.css';
import './load.css';
import './sheet/load-sheet.css';
import { useEffect } from 'preact/hooks';
import type { ReadyCard } from '../../geo/load/weigh/load-card.ts';
import { LOAD_CAUTION } from '../../geo/load/weigh/say-plates.ts';
import { NoticeArea } from '../look/notice.tsx';
import { description, vehicle } from '../state/kept.ts';
import { aboard } from '../state/loads.ts';
import { NoVehicle } from '../vehicle/no-vehicle.tsx';
import { LoadAnnouncer } from './announcer.tsx';
import { Ask } from './ask/ask.tsx';
import { endQuestion } from './ask/ask-state.ts';
import { Scales } from './drawing/scales.tsx';
import { Ledger } from './ledger/ledger.tsx';
import { CuresNow } from './panel/cures.tsx';
import { Decides } from './panel/decides.tsx';
import { Estimate } from './panel/estimate.tsx';
import { hasPlaces, NoPlaces } from './panel/missing.tsx';
import { Doubts, LoadNotes } from './panel/notes.tsx';
import { Seats } from './panel/seats.tsx';
import { TankLevels } from './panel/tank-levels.tsx';
import { LoadSheet } from './sheet/load-sheet.tsx';
import { focusIfLost } from './state/keep-focus.ts';
import { saveNow } from './state/save-soon.ts';
import { change, loadCard, shown, weighed } from './state/state.ts';
import { listenToUndo } from './state/undo-keys.ts';
import { LoadToolbar } from './toolbar.tsx';

/** The load: a vehicle from the side with what is aboard, each axle against its plate, and what would be too much. */
export function LoadView() {
  useEffect(() => {
    const ends = [listenToUndo(window), saveBeforeLeaving(window)];
    return () => {
      for (const end of ends) end();
      saveNow();
      endQuestion();
    };
  }, []);
  const chosen = vehicle.value;
  // what was asked of another vehicle stood at that one's places
  useEffect(endQuestion, [chosen?.id]);
  if (!chosen)
    return description.value ? (
      <>
        <NoVehicle why="A load is held against one vehicle’s axle plates." />
        <NoticeArea />
      </>
    ) : null;
  const { id } = chosen;
  const card = loadCard.value;
  if (!card) return null;
  return (
    <>
      <div class="load" key={id}>
        <section class="load-place" aria-label="The vehicle and what is aboard">
          <LoadToolbar />
          <div class="load-decides-first">
            {weighed.value?.ok && <Decides result={weighed.value.value} />}
          </div>
          <Scales card={card} />
          <div class="load-ledger-place">
            <Ledger
              card={card}
              items={shown.value}
              result={weighed.value?.ok ? weighed.value.value : undefined}
            />
            <NothingYet id={id} />
          </div>
          <NoticeArea />
        </section>
        <LoadPanel id={id} card={card} />
        <LoadAnnouncer />
      </div>
      <LoadSheet card={card} />
    </>
  );
}

function LoadPanel({ id, card }: { id: string; card: ReadyCard }) {
  const found = weighed.value;
  const items = aboard.value;
  return (
    <section class="load-panel" aria-label="The load">
      <h2>
        <bdi>{clip(card.name, 80)}</bdi>
      </h2>
      {found?.ok && <Decides result={found.value} />}
      {found?.ok === false && (
        <p role="alert" class="problem">
          {found.error.message}
        </p>
      )}
      {card.estimated && <Estimate id={id} card={card} of={card.estimated} />}
      <p class="caution">{LOAD_CAUTION}</p>
      {found?.ok && <Doubts result={found.value} />}
      {found?.ok && <CuresNow card={card} items={items} />}
      <Ask card={card} />
      {!hasPlaces(card) && <NoPlaces id={id} />}
      <Seats card={card} items={items} />
      <TankLevels card={card} items={items} />
      {found?.ok && <LoadNotes card={card} result={found.value} />}
    </section>
  );
}

/** Nothing is listed yet: how to begin. */
function NothingYet({ id }: { id: string }) {
  const sample = description.value?.sample.load;
  if (aboard.value.length > 0) return null;
  return (
    <p class="load-nothing">
      Nothing is listed beyond the empty vehicle, ready to drive. Put people on their seats, fill the tanks,
      and ask what can be taken; or open a load list.{' '}
      {sample?.vehicleId === id && (
        <button
          type="button"
          onClick={() => {
            change(sample.items, `showed ${sample.name}`);
            focusIfLost('load-undo');
          }}
        >
          Show the sample load
        </button>
      )}
    </p>
  );
}

function saveBeforeLeaving(page: Window): () => void {
  page.addEventListener('pagehide', saveNow);
  return () => page.removeEventListener('pagehide', saveNow);
}
