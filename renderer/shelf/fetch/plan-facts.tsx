import type { ComponentChildren } from 'preact';
import { printBytes } from '../../../geo/units/print.ts';
import { clip, counted } from '../../../geo/units/text.ts';
import type { FetchPlan } from '../../../main/contract/fetch.ts';
import { isPublicServer } from '../../../main/contract/server-address.ts';
import { sayTime } from '../../look/say-left.ts';
import { settings } from '../../state/kept.ts';
import { dialog } from '../../state/page.ts';
import { sayToday } from './ways.ts';

/** From whom, how much and how long, figure by figure; and whose server it is. */
export function PlanFacts({ plan }: { plan: FetchPlan }) {
  if (plan.by === 'region' && plan.step === 'none') return <Whose plan={plan} />;
  return (
    <>
      <dl class="fetch-facts">
        <Fact what="From">{plan.host}</Fact>
        <Fact what="How much">
          {plan.bytes === undefined ? 'not known before' : `about ${printBytes(plan.bytes)}`}
          {plan.by === 'line' && `, in about ${counted(plan.queries, 'question')}, one after the other`}
        </Fact>
        {plan.seconds !== undefined && <Fact what="How long">{sayTime(plan.seconds)}</Fact>}
        {plan.by === 'line' && <Fact what="Asked of it today">{sayToday(plan.today)}</Fact>}
        {plan.by === 'region' && plan.regions.length > 0 && (
          <Fact what={plan.step === 'maps' ? 'Maps' : 'Regions'}>
            <Regions plan={plan} />
          </Fact>
        )}
      </dl>
      <Whose plan={plan} />
    </>
  );
}

function Fact({ what, children }: { what: string; children: ComponentChildren }) {
  return (
    <div>
      <dt>{what}</dt>
      <dd>{children}</dd>
    </div>
  );
}

function Regions({ plan }: { plan: Extract<FetchPlan, { by: 'region' }> }) {
  return (
    <ul class="fetch-regions">
      {plan.regions.map(({ id, name, bytes }) => (
        <li key={id}>
          <bdi>{clip(name, 60)}</bdi>
          {bytes !== undefined && <span>{printBytes(bytes)}</span>}
        </li>
      ))}
    </ul>
  );
}

/** Whose server it is, and where another can be named. What a shared one means is among what its plan says. */
function Whose({ plan }: { plan: FetchPlan }) {
  return (
    <p class="fetch-whose small soft">
      {isPublicServer(settings.value.servers[plan.by])
        ? 'This is a public server.'
        : 'This server is named in Settings.'}{' '}
      <button
        type="button"
        class="quiet"
        onClick={() => {
          dialog.value = 'settings';
        }}
      >
        Name another in Settings
      </button>
    </p>
  );
}
