import './fetch.css';
import { useEffect, useRef, useState } from 'preact/hooks';
import type { FetchPlan } from '../../../main/contract/fetch.ts';
import { agree } from '../../actions/fetch-map.ts';
import { Doing } from '../../look/doing.tsx';
import { fetching } from '../../state/fetching.ts';
import { shelfWork } from '../../state/happening.ts';
import { dialog } from '../../state/page.ts';
import { shelfWaiting } from '../../state/shelf.ts';
import { PlanFacts } from './plan-facts.tsx';
import { STEPS } from './steps.ts';

/** What would be sent to whom, how much and how long; nothing is sent before the yes. */
export function FetchDialog() {
  const now = fetching.value;
  if (!now) return <p>Nothing is to be fetched.</p>;
  const { plan, busy, problem } = now;
  return (
    <>
      {plan.by === 'region' && plan.step !== 'none' && <StepList now={plan.step} />}
      {busy ? (
        <div role="status">
          <p>Asking {plan.host}. The next step will stand here.</p>
          {shelfWork.value && <Doing doing={shelfWork.value} more={shelfWaiting.value} />}
        </div>
      ) : (
        <Ask key={plan.by === 'region' ? plan.step : 'line'} plan={plan} />
      )}
      <div role="alert">{problem !== undefined && <p class="problem">{problem}</p>}</div>
    </>
  );
}

/** Fetching whole regions takes three yeses; this is where in them the user is. */
function StepList({ now }: { now: 'index' | 'sizes' | 'maps' }) {
  return (
    <ol class="fetch-steps">
      {STEPS.map(({ step, name }, i) => (
        <li key={step} aria-current={step === now ? 'step' : undefined}>
          <span class="mono">{i + 1}</span> {name}
        </li>
      ))}
    </ol>
  );
}

function Ask({ plan }: { plan: FetchPlan }) {
  const [keepFiles, setKeepFiles] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  const step = plan.by === 'region' ? plan.step : undefined;
  // a step that takes the place of another is read out from its beginning
  useEffect(() => heading.current?.focus(), []);
  return (
    <>
      <section>
        <h3 ref={heading} tabIndex={-1}>
          {HEADING[step ?? 'line']}
        </h3>
        {plan.say.map((say) => (
          <p key={say}>
            <bdi>{say}</bdi>
          </p>
        ))}
      </section>
      <PlanFacts plan={plan} />
      {step === 'maps' && (
        <label class="keep-files">
          <input
            type="checkbox"
            checked={keepFiles}
            onChange={({ currentTarget }) => setKeepFiles(currentTarget.checked)}
          />{' '}
          Keep the files too, beside the maps made of them. Checking does not need them; mending a damaged map
          does.
        </label>
      )}
      <p class="fetch-yes">
        {step !== 'none' && (
          <button type="button" class="chief" onClick={() => void agree({ keepFiles })}>
            {YES[step ?? 'line']}
          </button>
        )}
        <button
          type="button"
          onClick={() => {
            dialog.value = undefined;
          }}
        >
          {step === 'none' ? 'Close' : 'No, send nothing'}
        </button>
      </p>
    </>
  );
}

const HEADING = {
  line: 'Only the roads along the drive',
  index: 'First the list of regions',
  sizes: 'Then how large they are',
  maps: 'The maps themselves',
  none: 'No region',
};

const YES = {
  line: 'Yes, fetch it',
  index: 'Yes, ask for the list',
  sizes: 'Yes, ask for the sizes',
  maps: 'Yes, fetch these maps',
};
