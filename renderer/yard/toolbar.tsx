import { signal } from '@preact/signals';
import { METRES_PER_MILE } from '../../geo/units/exact.ts';
import { clip } from '../../geo/units/text.ts';
import { type Arrangement, ORDERS, type Order, TAKES, type Takes } from '../../geo/yard/arrange.ts';
import { settings } from '../state/kept.ts';
import { ChooseDrives } from './choose-drives.tsx';
import { ChooseSeveral, HandOverSeveral } from './several/choose-several.tsx';
import { outChanged, sheetsOut } from './state/out.ts';
import { judge } from './state/work.ts';
import { type Aside, arrangement, aside, bin, columns, standing, yardWork } from './state/yard.ts';

/** Where there is little room the fields are shown when they are asked for. */
const findShown = signal(false);

const ORDER_WORD: Readonly<Record<Order, string>> = {
  name: 'by name',
  length: 'longest first',
  worst: 'worst first',
};

/** What can be done with the grid, and which of it is shown. */
export function Toolbar() {
  const { missing, stale, changed } = standing.value;
  const busy = yardWork.value !== undefined;
  return (
    <div class="yard-toolbar">
      <div class="yard-buttons">
        <ChooseDrives />
        {missing > 0 && (
          <button type="button" class="chief" disabled={busy} onClick={() => void judge('missing')}>
            Check {missing} not checked
          </button>
        )}
        {stale > 0 && (
          <button type="button" disabled={busy} onClick={() => void judge('stale')}>
            Check {stale} old again
          </button>
        )}
        <span class="yard-gap" />
        <HandOverSeveral />
        <button
          type="button"
          class="yard-beside yard-find"
          aria-expanded={findShown.value}
          onClick={() => {
            findShown.value = !findShown.value;
          }}
        >
          Find and sort
        </button>
        <Beside which="changes" say="What changed" count={changed} />
        <Beside which="places" say="What stops most" />
        {sheetsOut.value.length > 0 && (
          <Beside which="out" say="What is out" count={outChanged.value.length} />
        )}
        {bin.value.length > 0 && <Beside which="bin" say="Bin" count={bin.value.length} />}
      </div>
      <ChooseSeveral />
      <Filters />
    </div>
  );
}

function Beside({
  which,
  say,
  count = 0,
}: {
  which: Exclude<Aside['kind'], 'drive'>;
  say: string;
  count?: number;
}) {
  const shown = aside.value?.kind === which;
  return (
    <button
      type="button"
      class="yard-beside"
      aria-pressed={shown}
      onClick={() => {
        aside.value = shown ? undefined : { kind: which };
      }}
    >
      {say}
      {count > 0 && <b class="yard-count"> {count}</b>}
    </button>
  );
}

function change(part: Partial<Arrangement>): void {
  arrangement.value = { ...arrangement.peek(), ...part };
}

function Filters() {
  const asked = arrangement.value;
  return (
    <search
      class={findShown.value ? 'yard-filters yard-filters-shown' : 'yard-filters'}
      aria-label="Drives of the yard"
    >
      <label>
        <span class="small soft">Find</span>
        <input
          type="search"
          placeholder="name, file or road"
          value={asked.text}
          onInput={({ currentTarget }) => change({ text: currentTarget.value })}
        />
      </label>
      <label>
        <span class="small soft">Vehicle</span>
        <select
          value={asked.vehicle ?? ''}
          onChange={({ currentTarget }) => change({ vehicle: currentTarget.value || undefined })}
        >
          <option value="">any</option>
          {columns.value.map(({ id, name }) => (
            <option key={id} value={id}>
              {clip(name, 40)}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span class="small soft">Show</span>
        <select
          value={asked.takes}
          onChange={({ currentTarget }) =>
            change({ takes: TAKES.find((each) => each === currentTarget.value) ?? 'any' })
          }
        >
          {TAKES.map((each) => (
            <option key={each} value={each}>
              {takesWord(each, asked.vehicle !== undefined)}
            </option>
          ))}
        </select>
      </label>
      <Longest />
      <label>
        <span class="small soft">Sort</span>
        <select
          value={asked.order}
          onChange={({ currentTarget }) =>
            change({ order: ORDERS.find((each) => each === currentTarget.value) ?? 'name' })
          }
        >
          {ORDERS.map((each) => (
            <option key={each} value={each}>
              {ORDER_WORD[each]}
            </option>
          ))}
        </select>
      </label>
    </search>
  );
}

function takesWord(takes: Takes, named: boolean): string {
  if (takes === 'any') return 'every drive';
  const who = named ? 'it' : 'some vehicle';
  return takes === 'takes' ? `where nothing bars ${who}` : `where ${who} is barred`;
}

/** A drive no longer than this, in the units chosen. */
function Longest() {
  const miles = settings.value.units === 'imperial';
  const eachM = miles ? METRES_PER_MILE : 1000;
  const { longestM } = arrangement.value;
  return (
    <label>
      <span class="small soft">Up to, {miles ? 'miles' : 'km'}</span>
      <input
        type="number"
        class="yard-longest"
        min={0}
        step={10}
        value={longestM === undefined ? '' : Math.round(longestM / eachM)}
        onInput={({ currentTarget }) => {
          const typed = currentTarget.valueAsNumber;
          change({ longestM: typed > 0 ? typed * eachM : undefined });
        }}
      />
    </label>
  );
}
