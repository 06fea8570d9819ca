import './hand-over.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import { saveAsGpx } from '../actions/take-way.ts';
import { dialog } from '../state/page.ts';
import { sheetWanted } from '../state/sheet-wanted.ts';
import { Done } from './done.tsx';
import { NoTelephone } from './no-telephone.tsx';
import { type HandOverState, handOverDrive, keptSheet, sparseDrive } from './work.ts';

const CHECKING: HandOverState = { kind: 'working', what: 'Checking anew' };

/** Hands over the open drive, or shows a kept sheet: to be printed, and saved for the phone. */
export function HandOver() {
  const [state, setState] = useState<HandOverState>(CHECKING);
  const running = useRef<AbortController | undefined>(undefined);
  const begin = async (evenBarred: boolean) => {
    const stop = new AbortController();
    running.current = stop;
    setState(CHECKING);
    const number = sheetWanted.peek();
    const onProgress = ({ what }: { what: string }) => setState({ kind: 'working', what });
    const next = await (number === undefined
      ? handOverDrive(evenBarred, { signal: stop.signal, onProgress })
      : keptSheet(number));
    if (!stop.signal.aborted) setState(next);
  };
  useEffect(() => {
    const sparse = sheetWanted.peek() === undefined ? sparseDrive() : undefined;
    if (sparse === undefined) void begin(false);
    else setState({ kind: 'sparse', say: sparse });
    return () => running.current?.abort();
  }, []);
  return (
    <div class="handing">
      <div role="status">{state.kind === 'working' && <p>{state.what}…</p>}</div>
      <div role="alert">{state.kind === 'problem' && <p class="problem">{state.say}</p>}</div>
      {sheetWanted.value === undefined && <NoTelephone />}
      {state.kind === 'sparse' && <Sparse say={state.say} onGoOn={() => void begin(false)} />}
      {state.kind === 'barred' && <Barred onYes={() => void begin(true)} />}
      {state.kind === 'done' && <Done handed={state.handed} />}
    </div>
  );
}

/** The road followed holds the same drive as a track that leaves a device no choice. */
function Sparse({ say, onGoOn }: { say: string; onGoOn(): void }) {
  return (
    <div class="handing">
      <p class="problem">{say}</p>
      <p>
        Save the road followed as a dense track first, look whether it is the one that is meant, open that
        file and hand it over in place of this one.
      </p>
      <p class="handing-ways">
        <button type="button" class="chief" onClick={() => void saveAsGpx()}>
          Save the road followed
        </button>
        <button type="button" onClick={onGoOn}>
          Hand over as it is
        </button>
      </p>
    </div>
  );
}

function Barred({ onYes }: { onYes(): void }) {
  return (
    <div role="alertdialog" class="handing" aria-label="This drive is barred">
      <p class="problem">
        Something on this drive bars this vehicle. A sheet of it says “Do not drive” across its head.
      </p>
      <p>
        <button type="button" onClick={onYes}>
          Hand it over even so
        </button>{' '}
        <button
          type="button"
          class="chief"
          onClick={() => {
            dialog.value = undefined;
          }}
        >
          Back to the drive
        </button>
      </p>
    </div>
  );
}
