import { signal } from '@preact/signals';
import { ChooseDrives } from './choose-drives.tsx';
import { Filters } from './filters/filters.tsx';
import { ChooseSeveral, HandOverSeveral } from './several/choose-several.tsx';
import { outChanged, sheetsOut, sheetsShown } from './state/out.ts';
import { judge } from './state/work.ts';
import { type Aside, apart, aside, bin, standing, yardWork } from './state/yard.ts';

/** Where there is little room the fields are shown when they are asked for. */
const findShown = signal(false);

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
        {sheetsShown.value.length > 0 && (
          <Beside
            which="out"
            say="What is out"
            count={sheetsOut.value.length}
            more={outChanged.value.length > 0 ? `, ${outChanged.value.length} changed` : ''}
          />
        )}
        {apart.value.length > 0 && <Beside which="apart" say="Two versions" count={apart.value.length} />}
        {bin.value.length > 0 && <Beside which="bin" say="Bin" count={bin.value.length} />}
      </div>
      <ChooseSeveral />
      <Filters shown={findShown.value} />
    </div>
  );
}

function Beside({
  which,
  say,
  count = 0,
  more = '',
}: {
  which: Exclude<Aside['kind'], 'drive'>;
  say: string;
  count?: number;
  more?: string;
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
      {more}
    </button>
  );
}
