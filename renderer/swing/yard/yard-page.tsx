import { swingVehicleOf } from '../../../geo/swing/swing-vehicle.ts';
import { yardPlanOf } from '../../../geo/swing/yard/yard-plan.ts';
import { YARD_BOTH_WAYS, YARD_CARE, YARD_PARTS, yardNeeds } from '../../../geo/swing/yard/yard-steps.ts';
import { clip } from '../../../geo/units/text.ts';
import { settings, vehicle } from '../../state/kept.ts';
import { YardDrawing } from './yard-drawing.tsx';

const BOX = { widthPx: 330, heightPx: 262 };

/** What is written down, with the letters of the drawing. */
const BOXES = [
  ['C', 'across the circle, three times', 'm'],
  ['', 'rear track', 'm'],
  ['B', 'from the line out to the farthest mark, such as 0.46', 'm'],
  ['A', 'from A along the line to beside B, ahead or behind', 'm'],
  ['', 'tape may be off by / a chalk mark by', 'm'],
] as const;

/** The page that two people take into the yard. Seen on paper alone. */
export function YardPage() {
  const of = vehicle.value;
  if (!of) return null;
  const plan = swingVehicleOf(of.card);
  return (
    <article class="lesson-page yard-page" aria-hidden="true">
      <h1>Measure your vehicle in the yard</h1>
      <p>
        <b>
          <bdi>{clip(of.card.name, 60)}</bdi>
        </b>
        . Ten minutes, two people. How tightly it turns and how far its tail swings out then rest on this
        vehicle, not on a brochure.
      </p>
      <div class="yard-top">
        <YardDrawing vehicle={plan} mirrorsM={of.card.widthMirrorsM} box={BOX} />
        <div>
          <h2>You need</h2>
          <List of={yardNeeds(yardPlanOf(plan).roomM, settings.value.units)} />
          <h2>Take care</h2>
          <List of={YARD_CARE} />
        </div>
      </div>
      <div class="lesson-columns">
        {YARD_PARTS.map(({ title, steps }) => (
          <section key={title}>
            <h2>{title}</h2>
            <ol>
              {steps.map((step) => (
                <li key={step}>{step}</li>
              ))}
            </ol>
          </section>
        ))}
      </div>
      <p>{YARD_BOTH_WAYS}</p>
      <table class="yard-boxes">
        <thead>
          <tr>
            <th colSpan={2}>Write down</th>
            <th>wheel to the left</th>
            <th>wheel to the right</th>
          </tr>
        </thead>
        <tbody>
          {BOXES.map(([letter, what, unit]) => (
            <tr key={what}>
              <td>{letter && <span class="key-number">{letter}</span>}</td>
              <td>{what}</td>
              <td>{unit}</td>
              <td>{unit}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="yard-sign">
        Rack: on ☐ off ☐ &emsp; Date ________________ &emsp; Initials ________ , ________
      </p>
      <p class="small">
        Type the figures in under Swing, “Measure in the yard”; they are kept on the vehicle’s card.
      </p>
    </article>
  );
}

function List({ of }: { of: readonly string[] }) {
  return (
    <ul>
      {of.map((each) => (
        <li key={each}>{each}</li>
      ))}
    </ul>
  );
}
