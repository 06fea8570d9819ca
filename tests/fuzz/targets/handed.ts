import { dayIcs } from '../../../geo/export/day-ics.ts';
import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { findingsCsv } from '../../../geo/export/findings-csv.ts';
import { findingsGeoJson } from '../../../geo/export/findings-geojson.ts';
import { visorCards } from '../../../geo/handover/card/visor-cards.ts';
import { makeDocument } from '../../../geo/handover/document/make-document.ts';
import { phonePage } from '../../../geo/handover/phone/phone-page.ts';
import { sheetPage } from '../../../geo/handover/sheet/sheet-page.ts';
import { BY_MOST, SAY_MOST } from '../../../geo/notes/bounds.ts';
import { driveReportSchema } from '../../../geo/report/report.ts';
import { CARD_NAME_LONGEST } from '../../../geo/vehicle/bounds.ts';
import { PLAIN } from '../../../main/cli/paint.ts';
import { printReport } from '../../../main/cli/print-report.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import { type Handed, handedOver } from '../../support/hand-over/handed-over.ts';
import { csvFault } from '../../support/strict/csv-fault.ts';
import { gpxFault } from '../../support/strict/gpx-fault.ts';
import { htmlFault } from '../../support/strict/html-fault.ts';
import { icsFault } from '../../support/strict/ics-fault.ts';
import { road } from '../../support/way-round/ask-ways.ts';
import { hostileName } from '../make/names.ts';
import type { Random } from '../make/random.ts';
import { tagValue } from '../make/tags.ts';
import { faultInShown } from '../promises.ts';
import { jsonTarget } from '../target.ts';

/** What is named, and of how many characters a name may be where what is read and typed is held to that. */
const NAMED = {
  drive: undefined,
  file: 255,
  street: undefined,
  ref: undefined,
  lane: undefined,
  card: CARD_NAME_LONGEST,
  firm: 200,
  telephone: 60,
  before: 200,
  stop: 200,
  hours: 1000,
  note: SAY_MOST,
  by: BY_MOST,
} as const;
type Names = Readonly<Record<keyof typeof NAMED | 'limit', string>>;

function names(random: Random): Names {
  const each = Object.entries(NAMED).map(([what, most]) => {
    const plain = what.slice(0, most);
    return [what, random.chance(0.5) ? hostileName(random, most) || plain : plain];
  });
  return { ...(Object.fromEntries(each) as Names), limit: random.chance(0.5) ? '2.5' : tagValue(random) };
}

/** A street under a bridge, a lane to turn off into before it, a day with a stop, and what the firm knows of the place. */
function handedUnder({ drive, file, street, ref, lane, card, limit, stop, hours, note, by }: Names): Handed {
  return handedOver(
    [
      road(1, ['0,0', '5,0'], { name: street, ref }),
      road(2, ['5,0', '10,0'], { maxheight: limit, name: street, 'maxheight:conditional': ref }),
      road(3, ['5,0', '5,4', '10,4', '10,0'], { name: lane }),
      road(4, ['10,0', '20,0'], { access: lane, ref }),
    ],
    [1, 2, 4],
    {
      name: drive,
      file,
      card: { ...COACH_BUILT, name: card },
      day: { stops: [{ name: stop, lat: 50, lon: 7.005, stayMin: 20, hours }], before: ['fuel'] },
      localNotes: [
        { id: 'note-1', at: { lat: 50, lon: 7.008 }, say: note, heightM: 2.9, by, seen: '2026-05-01' },
      ],
    },
  );
}

/** Whatever somebody called something, what the driver takes along is a sound file of its kind and nothing else. */
export const handed = jsonTarget<Names>({
  name: 'what is handed over',
  weight: 3,
  make: names,
  check(named) {
    const made = handedUnder(named);
    return (
      faultInPages(made, named) ??
      faultInFiles(made, named) ??
      faultInShown(
        printReport(made.report, 80, PLAIN)
          .split('\n')
          .filter((line) => line !== ''),
      )
    );
  },
});

function faultInPages({ report, route, turnOffs, drawn }: Handed, { firm, telephone, before, card }: Names) {
  const document = makeDocument({
    report,
    route,
    turnOffs,
    sheet: { number: 'K7QM-4XPD', replaces: before },
    firm: { heading: firm, telephone },
    before: [before, firm],
  });
  const pages = {
    sheet: sheetPage(document, drawn, { faces: {}, paper: 'A4' }).page,
    phone: phonePage(document, drawn, {}),
    card: visorCards([{ ...COACH_BUILT, name: card }], { faces: {}, made: report.made }),
  };
  return firstFault(pages, htmlFault);
}

function faultInFiles({ report, route, turnOffs, document, drawn }: Handed, { stop, drive, note }: Names) {
  const told = new Map(
    document.places.flatMap(({ finding, turnOff }) => (turnOff ? [[finding.id, turnOff]] : [])),
  );
  const gpx = driveGpx(report, route, told);
  if (!gpx.ok) return `no drive: ${gpx.error.message}`;
  const due = [stop, note].map((what) => ({ what, at: '2027-06-12T09:30+01:00' }));
  const ics = dayIcs({ drive, due, made: report.made, uid: stop, program: 'Lanegauge', note });
  const off = [...told.values()].filter(({ place }) => place !== undefined).length;
  const stops = report.day?.stops.length ?? 0;
  const shown = report.findings.filter(({ folded }) => folded !== true).length;
  const found = JSON.parse(JSON.stringify(findingsGeoJson(report, drawn.drive, drawn.roads))) as {
    features: unknown[];
  };
  if (found.features.length !== report.findings.length) return 'not every finding is in the GeoJSON';
  if (!driveReportSchema.safeParse(JSON.parse(JSON.stringify(report))).success)
    return 'the report breaks its schema';
  if (turnOffs.size > 0 && told.size === 0) return 'no place to turn off is told';
  return (
    firstFault({ gpx: gpx.value }, (text) => gpxFault(text, shown + off + stops)) ??
    firstFault({ csv: findingsCsv(report, told) }, (text) => csvFault(text, report.findings.length + 1)) ??
    firstFault({ ics: ics ?? '' }, (text) => icsFault(text, due.length))
  );
}

function firstFault(files: Readonly<Record<string, string>>, faultOf: (text: string) => string | undefined) {
  for (const [name, text] of Object.entries(files)) {
    const fault = faultOf(text);
    if (fault !== undefined) return `${name}: ${fault}`;
  }
  return undefined;
}
