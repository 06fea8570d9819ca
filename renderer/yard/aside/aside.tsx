import type { Aside as Shown } from '../state/yard.ts';
import { aside } from '../state/yard.ts';
import { ApartList } from './apart-list.tsx';
import { BinList } from './bin-list.tsx';
import { ChangesList } from './changes-list.tsx';
import { DriveCard } from './drive-card.tsx';
import { OutList } from './out-list.tsx';
import { PlacesList } from './places-list.tsx';

const TITLE: Readonly<Record<Shown['kind'], string>> = {
  drive: 'The drive',
  changes: 'What changed',
  places: 'What stops most',
  out: 'What is out',
  bin: 'The bin',
  apart: 'Changed in two places',
};

/** What stands beside the grid: one drive, what changed, what stops most, or the bin. */
export function Aside({ shown }: { shown: Shown }) {
  return (
    <section class="yard-aside" aria-label={TITLE[shown.kind]}>
      <header>
        <h3>{TITLE[shown.kind]}</h3>
        <button
          type="button"
          onClick={() => {
            aside.value = undefined;
          }}
        >
          Close
        </button>
      </header>
      {shown.kind === 'drive' && <DriveCard key={shown.id} id={shown.id} />}
      {shown.kind === 'changes' && <ChangesList />}
      {shown.kind === 'places' && <PlacesList />}
      {shown.kind === 'out' && <OutList />}
      {shown.kind === 'bin' && <BinList />}
      {shown.kind === 'apart' && <ApartList />}
    </section>
  );
}
