import './yard.css';
import './grid/grid.css';
import './aside/aside.css';
import { useEffect, useRef } from 'preact/hooks';
import { STANDING_CAUTION } from '../../geo/report/standing-caution.ts';
import { Doing } from '../look/doing.tsx';
import { NoticeArea } from '../look/notice.tsx';
import { dropTarget } from '../state/drop-target.ts';
import { vehicles } from '../state/kept.ts';
import { dialog } from '../state/page.ts';
import { Aside } from './aside/aside.tsx';
import { EmptyYard } from './empty-yard.tsx';
import { YardGrid } from './grid/yard-grid.tsx';
import { Key } from './key.tsx';
import { YardPaper } from './paper/yard-paper.tsx';
import { addToYard } from './state/add.ts';
import { lookNearAgain } from './state/near.ts';
import { lookAtOut } from './state/out.ts';
import { lookAtYard } from './state/work.ts';
import { aside, drives, yard, yardSays, yardWork } from './state/yard.ts';
import { Toolbar } from './toolbar.tsx';

/** The yard: the firm's drives and vehicles, and which may take which. */
export function YardView() {
  useEffect(() => {
    dropTarget.value = {
      say: 'drives (GPX) for the yard, as many as you like',
      take: (files, folders) => void addToYard(files, folders),
    };
    return () => {
      dropTarget.value = undefined;
    };
  }, []);
  // a vehicle entered or changed makes other columns
  useEffect(() => {
    void lookAtYard();
  }, [vehicles.value]);
  // a dialog that was closed may have handed something over
  useEffect(() => {
    if (dialog.value === undefined) void lookAtOut();
  }, [vehicles.value, dialog.value]);
  // what was handed over was checked anew: its cells are of now
  const before = useRef(dialog.value);
  useEffect(() => {
    if (before.current === 'hand-over-pairs') void lookAtYard();
    before.current = dialog.value;
  }, [dialog.value]);
  useEffect(lookNearAgain, [drives.value]);
  const found = yard.value;
  if (found === undefined) return <p class="yard-wait soft">Looking at the library…</p>;
  return (
    <div class="yard">
      <h2 class="unseen">Yard</h2>
      {drives.value.length > 0 && <Toolbar />}
      <Told />
      {'problem' in found ? (
        <p class="problem">{found.problem}</p>
      ) : drives.value.length === 0 ? (
        <EmptyYard />
      ) : (
        <div class={aside.value ? 'yard-sheet yard-with-aside' : 'yard-sheet'}>
          <YardGrid />
          {aside.value && <Aside shown={aside.value} />}
        </div>
      )}
      <footer class="yard-foot">
        {drives.value.length > 0 && <Key />}
        <p class="small">{STANDING_CAUTION}</p>
      </footer>
      <NoticeArea />
      <YardPaper />
    </div>
  );
}

/** What is going on, and what came of it; both are read out. */
function Told() {
  const said = yardSays.value;
  return (
    <div class="yard-told">
      <div role="status">
        {yardWork.value && <Doing doing={yardWork.value} beside />}
        {said && !said.problem && <p class="small">{said.say}</p>}
      </div>
      <div role="alert">{said?.problem && <p class="problem small">{said.say}</p>}</div>
    </div>
  );
}
