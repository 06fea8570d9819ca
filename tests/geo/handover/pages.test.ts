import { describe, expect, it } from 'vitest';
import { sayOpen } from '../../../geo/day/say-open.ts';
import { driveGpx } from '../../../geo/export/drive-gpx.ts';
import { visorCards } from '../../../geo/handover/card/visor-cards.ts';
import { cardFigures, tailOneIn } from '../../../geo/handover/document/big-figures.ts';
import { calendarNote } from '../../../geo/handover/document/calendar-note.ts';
import { dayToKeep } from '../../../geo/handover/document/day-to-keep.ts';
import { phonePage } from '../../../geo/handover/phone/phone-page.ts';
import { sheetPage } from '../../../geo/handover/sheet/sheet-page.ts';
import { STANDING_CAUTION } from '../../../geo/report/standing-caution.ts';
import { COACH_BUILT } from '../../support/coach-built.ts';
import type { TestWay } from '../../support/drive-on.ts';
import { handedOver } from '../../support/hand-over/handed-over.ts';
import { road } from '../../support/way-round/ask-ways.ts';

const EVIL = '"><script>alert(1)</script>\u202e=1+1';

/** A street under a bridge of 2.5 m, and a lane to turn off into before it. */
const BARRED = handedOver(
  [
    road(1, ['0,0', '5,0'], { name: EVIL }),
    road(2, ['5,0', '10,0'], { maxheight: '2.5', name: EVIL }),
    road(3, ['5,0', '5,4', '10,4', '10,0'], { name: 'Long <Lane>' }),
    road(4, ['10,0', '20,0']),
  ],
  [1, 2, 4],
  { name: EVIL, telephone: '+44 1632 960123' },
);
const CLEAR = handedOver([road(1, ['0,0', '20,0'], { maxspeed: '50' })], [1]);

function pagesOf({ document, drawn }: typeof BARRED): { sheet: string; phone: string } {
  return {
    sheet: sheetPage(document, drawn, { faces: {}, paper: 'A4' }).page,
    phone: phonePage(document, drawn, {}),
  };
}

/** What a reader sees: without marks, styles and escapes. */
function seen(html: string): string {
  const text = html.replace(/<style>[\s\S]*?<\/style>/g, '').replace(/<[^>]*>/g, ' ');
  const named: Record<string, string> = { lt: '<', gt: '>', amp: '&', quot: '"', '#39': "'" };
  return text.replace(/&(lt|gt|amp|quot|#39);/g, (_, name: string) => named[name] ?? '');
}

describe('sheet and phone page', () => {
  const pages = pagesOf(BARRED);

  it('say do not drive across the head of a barred drive', () => {
    for (const page of Object.values(pages)) expect(page).toMatch(/<h1>Do not drive<\/h1>/);
    expect(seen(pagesOf(CLEAR).sheet)).not.toContain('Do not drive');
  });

  it('say of every finding what the report says, under its number, and where to turn off', () => {
    const shown = BARRED.report.findings.filter(({ folded }) => !folded);
    expect(shown.length).toBeGreaterThan(0);
    for (const page of Object.values(pages)) {
      const text = seen(page);
      for (const { say } of shown) expect(text).toContain(say);
      for (const { advice } of shown) expect(text).toContain(advice);
      expect(text).toMatch(
        /Last place to turn off before 0\d: 0\.5 km \(0\.3 mi\), .* before it, left into Long <Lane>/,
      );
      for (const { label } of BARRED.document.places) expect(text).toContain(label);
    }
  });

  it('carry the caution as written, what was not checked, and whom to ring', () => {
    for (const page of Object.values(pages)) {
      const text = seen(page);
      expect(text).toContain(STANDING_CAUTION);
      expect(text).toContain('What was not checked');
      expect(text).toContain('ring +44 1632 960123');
      expect(text).toContain('K7QM-4XPD');
      expect(text).toContain('(50.00000, 7.00000) to a road without a name (50.');
    }
    expect(pages.phone).toContain('href="tel:+441632960123"');
    const odd = handedOver([road(1, ['0,0', '5,0'])], [1], { telephone: '=0163+2 (96)' });
    expect(pagesOf(odd).phone).toContain('href="tel:0163296"');
  });

  it('hold no stranger’s markup, no script, and nothing that asks a network', () => {
    for (const page of Object.values(pages)) {
      expect(page).not.toMatch(/<script/i);
      expect(page).not.toContain('\u202e');
      expect(page).not.toMatch(/\s(src|srcset|action|data|poster)=/i);
      expect(page.match(/href="[^"]*"/g) ?? []).toSatisfy((all: string[]) =>
        all.every((one) => /^href="(geo|tel):/.test(one)),
      );
      expect(page).not.toMatch(/url\((?!data:)/i);
      expect(page).toContain("default-src 'none'");
    }
  });

  it('give places as links with their figures beside them', () => {
    expect(pages.phone).toMatch(/<a href="geo:50\.\d{5},7\.\d{5}">50\.\d{5}, 7\.\d{5}<\/a>/);
  });

  it('are made of a drive with nothing on it, and of one with five hundred findings', () => {
    expect(CLEAR.document.places).toEqual([]);
    const ways: TestWay[] = [];
    for (let i = 0; i < 500; i++)
      ways.push(road(i + 1, [`${i},0`, `${i + 1},0`], i % 2 ? { maxheight: '2.5' } : { maxweight: '2' }));
    const many = handedOver(
      ways,
      ways.map(({ id }) => id),
    );
    expect(many.document.places.length).toBeGreaterThan(400);
    const { sheet, phone } = pagesOf(many);
    expect(seen(sheet)).toContain(String(many.document.places.length));
    expect(phone.length).toBeLessThan(3_000_000);
  });
});

it('an entry of the calendar begins with the verdict, of a clear drive too', () => {
  expect(calendarNote(CLEAR.document, 'K7QM-4XPD')).toBe(
    'Nothing mapped stops it. That is no promise: what nobody has mapped is not known here. Sheet K7QM-4XPD.',
  );
  expect(calendarNote(BARRED.document, 'K7QM-4XPD')).toMatch(/^Do not drive this as planned/u);
});

it('a drive without a mapped road under it is told to be unchecked at the head of the sheet', () => {
  const off = handedOver([road(1, ['0,0', '5,0'])], [{ offMapM: 5000 }]);
  expect(off.document.verdict.say).toContain('nothing on it is checked');
  expect(seen(pagesOf(off).sheet)).toContain(off.document.verdict.say);
});

it('who drives is told to ask the firm, not to mend the drive or to get another map', () => {
  const part = handedOver([road(1, ['0,0', '5,0'])], [1, { offMapM: 2000 }]);
  const off = part.report.findings.find(({ kind }) => kind === 'off the map');
  expect(off?.advice).toContain('mend the route');
  const gpx = driveGpx(part.report, part.route);
  for (const text of [...Object.values(pagesOf(part)).map(seen), gpx.ok ? gpx.value : '']) {
    expect(text).toContain('Ask the firm before setting off.');
    expect(text).not.toContain('mend the route');
  }
});

describe('the day', () => {
  it('stands on sheet and phone page with its stops and what falls due', () => {
    const stop = { name: 'Dump <1>', lat: 50, lon: 7.005, stayMin: 20, services: ['cassette' as const] };
    const handed = handedOver([road(1, ['0,0', '5,0', '20,0'])], [1], {
      day: { stops: [stop], before: ['fuel'] },
    });
    for (const page of Object.values(pagesOf(handed))) {
      expect(seen(page)).toContain('Dump <1>');
      for (const { say } of handed.report.day?.due ?? []) expect(seen(page)).toContain(say);
    }
    expect(handed.report.day?.due.length).toBeGreaterThan(1);
  });

  it('tells of a stop that is the only one and does not lie on the drive', () => {
    const stop = { name: 'Far mill', lat: 51, lon: 8, stayMin: 20 };
    const handed = handedOver([road(1, ['0,0', '5,0', '20,0'])], [1], { day: { stops: [stop] } });
    for (const page of Object.values(pagesOf(handed)))
      expect(seen(page)).toContain('Not on this drive: Far mill.');
  });

  it('says of a mapped place without hours, or without a leave time, that nobody knows whether it is open', () => {
    const osm = { type: 'node' as const, id: 7 };
    const stop = { name: 'Dump', lat: 50, lon: 7.005, stayMin: 20, osm };
    const handed = handedOver([road(1, ['0,0', '5,0', '20,0'])], [1], { day: { stops: [stop] } });
    expect(handed.document.day?.stops[0]?.note).toContain('no leave time is given');
    const [met] = handed.report.day?.stops ?? [];
    expect(met && sayOpen({ ...met, arriveAt: '2027-06-12T09:42+01:00' })).toBe('Its hours are not mapped.');
    expect(met && sayOpen({ ...met, osm: undefined })).toBe(undefined);
  });

  it('tells its stays beside the driving, which the hour of arrival counts in', () => {
    const stop = { name: 'Mill', lat: 50, lon: 7.005, stayMin: 90 };
    const handed = handedOver([road(1, ['0,0', '5,0', '20,0'])], [1], { day: { stops: [stop] } });
    expect(handed.document.drive.times).toContain('and 1 h 30 min at stops');
  });

  it('brings its advice along', () => {
    const handed = handedOver([road(1, ['0,0', '5,0'])], [1], { day: { stops: [] } });
    const { day } = handed.report;
    const say = 'A break of 15 min';
    const advised = day && { ...day, advice: [{ kind: 'break' as const, atM: 300, lat: 50, lon: 7, say }] };
    expect(dayToKeep({ ...handed.report, ...(advised && { day: advised }) })?.notes.join()).toContain(say);
  });
});

describe('a place to turn off that lies before another finding', () => {
  it('is told so; with none at all the drive is not to be begun', () => {
    const twice = handedOver(
      [
        road(1, ['0,0', '5,0']),
        road(2, ['5,0', '10,0'], { maxheight: '2.5' }),
        road(3, ['10,0', '15,0']),
        road(4, ['15,0', '20,0'], { maxheight: '2.4' }),
        road(5, ['5,0', '5,4', '20,4', '20,0']),
      ],
      [1, 2, 3, 4],
    );
    const [first, second] = twice.document.places.filter(({ turnOff }) => turnOff !== undefined);
    expect(first?.turnOff?.say).not.toContain('It lies before');
    expect(second?.turnOff?.say).toContain(`It lies before ${first?.label}: none comes after that.`);
    const none = handedOver([road(1, ['0,0', '5,0']), road(2, ['5,0', '9,0'], { maxheight: '2.5' })], [1, 2]);
    expect(none.document.places[0]?.turnOff?.say).toBe('No place to turn off before it: do not start.');
  });
});

describe('a visor card', () => {
  it('rounds every size up, so that no sign is thought to be high enough', () => {
    const card = { ...COACH_BUILT, heightM: 3.148, rearClearanceM: 0.331 };
    // 3.148 m and the 5 cm that the check counts with
    expect(cardFigures(card)[0]).toEqual({
      what: 'Height, with 5 cm for measuring',
      metric: '3.20 m',
      imperial: '10′6″',
    });
    // 2.42 m behind the axle over 0.331 m is 7.31
    expect(tailOneIn(card)).toBe('1 in 8');
  });

  it('of a fleet holds a page each, with the length of both, rack on and off', () => {
    const racked = { ...COACH_BUILT, name: 'Two', rack: { lengthM: 0.7, widthM: 2, fitted: false } };
    const page = visorCards([COACH_BUILT, racked], {
      faces: {},
      made: '2027-01-01T00:00:00Z',
      sheet: 'K7QM-4XPD',
    });
    expect(page.match(/<article/g)).toHaveLength(2);
    expect(seen(page)).toContain('Length with rack');
    expect(seen(page)).toContain('Body 2.3');
    expect(page).toContain('8.11<small> m');
    expect(page.match(/as on 1 January 2027, with sheet K7QM-4XPD/g)).toHaveLength(2);
  });
});

it('a visor card is shown smaller on a screen that its 186 mm do not fit, so that nothing of it is cut off', () => {
  const page = visorCards([COACH_BUILT], { faces: {}, made: '2027-01-01T00:00:00Z' });
  const rules = [...page.matchAll(/max-width:(\d+)px\)\{\.sheet\{zoom:([\d.]+)/g)];
  const steps = rules.map(([, px, zoom]) => ({ px: Number(px), zoom: Number(zoom) }));
  const widthPx = (186 / 25.4) * 96;
  expect(steps[0]?.px).toBeGreaterThan(widthPx);
  // each holds down to where the next begins, the last on the narrowest telephone
  steps.forEach(({ zoom }, i) => {
    expect(widthPx * zoom).toBeLessThanOrEqual((steps[i + 1]?.px ?? 299) + 1);
  });
});

describe('a page', () => {
  const more = [
    { signs: 'U+100-17F', regular: 'latin-more', bold: 'latin-more-bold' },
    { signs: 'U+400-45F,U+490-491', regular: 'cyrillic' },
  ];
  const cardOf = (name: string) =>
    visorCards([{ ...COACH_BUILT, name }], { faces: { regular: 'own', more }, made: '2027-01-01T00:00:00Z' });

  it('brings the faces along that the letters on it want, and no others', () => {
    expect(cardOf('Café')).not.toMatch(/latin-more|cyrillic/);
    expect(cardOf('Łódź')).toContain('unicode-range:U+100-17F;src:url(data:font/woff2;base64,latin-more)');
    expect(cardOf('Łódź')).not.toContain('cyrillic');
    expect(cardOf('Ґанок')).toMatch(/base64,cyrillic/);
  });
});

it('a tunnel without a height on a main road has no number, but its place stands on sheet, phone page and in the GPX', () => {
  const handed = handedOver(
    [
      road(1, ['0,0', '7,0'], { highway: 'primary', name: 'Coast Road' }),
      road(2, ['7,0', '9,0'], { highway: 'primary', tunnel: 'yes', name: 'Coast Road' }),
    ],
    [1, 2],
  );
  expect(handed.document.places).toEqual([]);
  for (const page of Object.values(pagesOf(handed)))
    expect(seen(page)).toContain('Tunnel without a height (read the signs): Coast Road at 0.7 km (0.4 mi).');
  const gpx = driveGpx(handed.report, handed.route);
  expect(gpx.ok && gpx.value).toContain('<name>LOW ?</name>');
});
