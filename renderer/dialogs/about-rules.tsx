import { aboutCountries, type CountryPage, TRUST_WORD } from '../../geo/country/about.ts';
import type { Source } from '../../geo/country/cited.ts';
import { lawNotes } from '../../geo/load/doubts/law-notes.ts';
import { report } from '../state/check.ts';

/** What the check takes to hold in each country, and how far each line can be relied on. */
export function AboutRules() {
  const driven = new Set(report.value?.country ?? []);
  const pages = aboutCountries();
  const first = pages.filter(({ code }) => driven.has(code));
  const others = pages.filter(({ code }) => !driven.has(code));
  return (
    <>
      <p>
        Signs and local rules always win. A line that is not confirmed is used where something must be, always
        on the careful side, and never told as a fact.
      </p>
      {first.map((page) => (
        <Country key={page.code} page={page} open />
      ))}
      {others.map((page) => (
        <Country key={page.code} page={page} />
      ))}
      <LawNotesOfCard />
    </>
  );
}

function Country({ page, open = false }: { page: CountryPage; open?: boolean }) {
  return (
    <details class="rules-of" open={open}>
      <summary>{page.name}</summary>
      <dl>
        {page.lines.map(({ about, says, source }) => (
          <div key={about}>
            <dt>{about}</dt>
            <dd>
              {says} <Cited source={source} />
            </dd>
          </div>
        ))}
      </dl>
    </details>
  );
}

function Cited({ source }: { source: Source }) {
  const read = source.trust === 'law' || source.trust === 'second-hand';
  return (
    <span class="small soft">
      {TRUST_WORD[source.trust]}
      {read && `: ${source.text}`}
    </span>
  );
}

/** Licence and marking notes for the vehicle of the check, with their sources. */
function LawNotesOfCard() {
  const card = report.value?.vehicle;
  if (card === undefined) return null;
  return (
    <details class="rules-of">
      <summary>Licence and law for {card.name}</summary>
      <ul class="plain-list">
        {lawNotes(card).map(({ says, source }) => (
          <li key={says}>
            {says} <Cited source={source} />
          </li>
        ))}
      </ul>
    </details>
  );
}
