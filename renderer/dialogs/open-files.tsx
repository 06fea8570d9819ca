import { useRef } from 'preact/hooks';
import { clip } from '../../geo/units/text.ts';
import type { Recent } from '../../main/contract/source.ts';
import { beginPlan } from '../actions/begin-plan.ts';
import { forgetRecent } from '../actions/keep.ts';
import { openRecent, openSample } from '../actions/open.ts';
import { LookAtShelf } from '../shelf/look-at-shelf.tsx';
import { OWN_DRIVES } from '../shelf/own-drives.ts';
import { description } from '../state/kept.ts';
import { dialog } from '../state/page.ts';
import { mapsOnShelf } from '../state/shelf.ts';
import { takeFiles } from '../take/take-files.ts';

/** Drives and maps: from a file, from those opened before, or the sample. */
export function OpenFiles() {
  const known = description.value;
  const recents = known?.recents ?? [];
  return (
    <>
      <section>
        <ChooseFiles />
        <p class="small soft">
          A drive is a GPX file. A map is an extract of OpenStreetMap data: .osm.pbf, .osm, .osm.gz, or an
          Overpass answer. A vehicle card and a load list are taken too. Files can also be dropped anywhere on
          the window, a drive and its map together.
        </p>
        <p class="small">
          {mapsOnShelf.value === 0
            ? `A drive can come alone. ${OWN_DRIVES}`
            : 'A drive can come alone: the maps on your shelf are used for it.'}{' '}
          <LookAtShelf />
        </p>
      </section>
      <section>
        <h3>Without a file</h3>
        <p>
          <button type="button" onClick={beginPlan}>
            Plan a drive
          </button>{' '}
          <span class="small soft">from places that you put, along roads this vehicle may use</span>
        </p>
      </section>
      {recents.length > 0 && (
        <section>
          <h3>Opened before</h3>
          <ul class="choices">
            {recents.map((recent) => (
              <RecentFile key={recent.id} recent={recent} />
            ))}
          </ul>
        </section>
      )}
      <section>
        <h3>Sample drives, in an invented district</h3>
        <ul class="choices">
          {known?.sample.drives.map(({ id, name, says }) => (
            <li key={id}>
              <button type="button" class="quiet" onClick={() => closeAnd(() => openSample(id))}>
                {name}
              </button>
              <span class="small soft">{says}</span>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

function ChooseFiles() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <p>
      <button type="button" class="chief" onClick={() => input.current?.click()}>
        Choose a file…
      </button>
      <input
        ref={input}
        type="file"
        multiple
        hidden
        aria-label="A drive, a map, a vehicle card or a load list"
        onChange={({ currentTarget }) => {
          const files = [...(currentTarget.files ?? [])];
          if (files.length > 0) closeAnd(() => takeFiles(files));
        }}
      />
    </p>
  );
}

function RecentFile({ recent }: { recent: Recent }) {
  const { id, use, name, openedAt } = recent;
  const shown = clip(name, 60);
  return (
    <li>
      <button type="button" class="quiet" onClick={() => closeAnd(() => openRecent(recent))}>
        <bdi>{shown}</bdi>
      </button>
      <span class="small soft">
        {use}, opened{' '}
        {new Date(openedAt).toLocaleString('en-GB', { dateStyle: 'medium', timeStyle: 'short' })}
      </span>
      <button type="button" class="small" aria-label={`Forget ${shown}`} onClick={() => forgetRecent(id)}>
        Forget
      </button>
    </li>
  );
}

function closeAnd(act: () => Promise<void>): void {
  dialog.value = undefined;
  void act();
}
