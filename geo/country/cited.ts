/** How far a text can be relied on: read in the law or on a government's page, told by others, not read at all. */
export const TRUSTS = ['law', 'second-hand', 'practice', 'memory'] as const;
export type Trust = (typeof TRUSTS)[number];

/** Where a figure or a meaning comes from. */
export interface Source {
  /** names the text and what was read there */
  readonly text: string;
  readonly trust: Trust;
}

/** For a figure that no published text was read for: it is used where something must be, and never told as a fact. */
export const FROM_MEMORY: Source = { text: 'from memory, to confirm', trust: 'memory' };
/** For what the trade does and no text lays down. */
export const COMMON_PRACTICE: Source = { text: 'common practice, no source', trust: 'practice' };

/** Law texts and government pages. */
const law = (text: string): Source => ({ text, trust: 'law' });
/** Clubs, press, handbooks, owners and collections that quote a text. */
const told = (text: string): Source => ({ text, trust: 'second-hand' });

/**
 * The published texts behind the table, each with what was read there.
 * A cell can name one of these or one of the two above and nothing else: a cell without a source does not compile.
 */
export const SOURCES = {
  borderData: told('border data of country-coder 5.6.1: driving side'),
  speedData: told('OpenStreetMap wiki, Default speed limits, revision of 21 October 2023'),
  directive96: told('Directive 96/53/EC annex I, as quoted: 4.00 m high, 2.55 m wide'),
  govUkSpeeds: law('gov.uk, Speed limits: motorhomes or motor caravans up to and over 3.05 t unladen'),
  walesSpeeds: law('SI 2022/800 (Wales): 20 mph on restricted roads since 17 September 2023'),
  hseHeight: law('HSE workplace transport, height: standard clearance of public roads 16 ft 6 in (5.03 m)'),
  trafficSignsManual3: law(
    'Traffic Signs Manual chapter 3, 5.15: sign 622.1A, goods vehicles by plated weight',
  ),
  trafficSignsManualMass: told(
    'Traffic Signs Manual chapter 3 (2008) on weight signs: maximum gross weight; drivers disagree',
  ),
  cAndU: told(
    'Road Vehicles (Construction and Use) Regulations 1986 as quoted by owners: mirrors are not width',
  ),
  irelandSpeeds: law(
    'S.I. 9/2005 as stated in the Dáil: vehicle limits name goods vehicles over 3.5 t, buses and towing',
  ),
  irelandLocal: law(
    'Cavan County Council: local roads 60 km/h since 7 February 2025; regional 80, national 100',
  ),
  irelandTown: law(
    'Dáil, 7 November 2024: the Act of 2024 sets 30 in towns and 80 on national secondary roads once commenced',
  ),
  irelandHeight: law('S.I. 366 of 2008, as announced by Dublin City Council: 4.65 m since November 2013'),
  irelandWidth: told('a law blog on the construction and use regulations: mirrors are disregarded'),
  franceCars: law('Code de la route, R413-2: 80, 110, 130 km/h; less in rain'),
  franceHeavy: law(
    'Code de la route, R413-8-1 (persons, 3.5 to 12 t: 110, 100, 80) and R413-8 (over 12 t: 90, 90, 80)',
  ),
  franceHeight: law(
    'Instruction interministérielle sur la signalisation routière, art. 61: signs are compulsory below 4.30 m',
  ),
  franceMass: told('a camping federation on the B13 sign: plated mass (PTAC)'),
  franceGoods: law(
    'Arrêté of 24 November 1967, article 4: goods signs name vehicles for the carriage of goods',
  ),
  germanHeight: law('StVO § 18(1), StVZO § 32: 4.00 m high, 2.55 m wide'),
  germanUnsigned: told(
    'German insurers and the map’s handbook: signs stand only below 4.5 m; design height 4.50 m',
  ),
  germanSpeeds: law('StVO § 3(3) and § 18(5), 12. Ausnahmeverordnung zur StVO § 1'),
  germanHeavy: told('a German traffic law reference: dual carriageways that are no motorroad, over 7.5 t'),
  germanGoods: law('StVO Anlage 2, Zeichen 253: over 3.5 t plated, cars and buses excepted'),
  germanSigns: law('StVO Anlage 2, Zeichen 262 to 266: actual figures, load included'),
  germanWidth: law('StVO Anlage 2, Zeichen 264: actual width includes the outside mirrors'),
  spainSpeeds: law('Reglamento General de Circulación, art. 48: 120 and 90; over 3.5 t 90 and 80'),
  spainUrban: told('RD 970/2020, as reported: 30 km/h in streets with one lane each way'),
  spainGoods: law('Reglamento General de Circulación, R-106: vehicles for the carriage of goods'),
  spainHeight: law('Norma 8.1-IC, 9.6: sign R-205 wherever less than 4.0 m is free'),
  italySpeeds: law('Codice della strada, art. 142(1)'),
  italyGoods: told(
    'Regolamento, fig. II 60/a: vehicles not for the carriage of persons; motor caravans are free',
  ),
  italyHeight: law('DPR 495/92, art. 118(1)b: a sign only where a vehicle of the legal height cannot pass'),
  austriaSpeeds: law('KDV § 58 (2016): over 3.5 t 70, motorroads and motorways 80'),
  austriaHeight: law('an Austrian authority’s page: 12.00 m long, 2.55 m wide, 4.00 m high'),
  austriaGoods: law('StVO § 52 Z 7a: lorries only, by permitted mass'),
  austriaMass: told('Austrian motorists’ club: a plain mass sign is the actual mass of every vehicle'),
  swissSpeeds: law('VRV art. 5: 80, 100, 100 over 3.5 t'),
  swissMeeting: law('SSV art. 22b(2): 20 km/h in a Begegnungszone'),
  swissGoods: law('SSV art. 19: heavy motor vehicles for the carriage of goods'),
  swissMass: law('SSV art. 20: operating mass, as it stands on the road'),
  swissHeight: law('SSV art. 21(2): the sign stands where a vehicle 4.00 m high cannot pass safely'),
  swissLegal: law('VTS art. 94: 12.00 m long, 2.55 m wide, 4.00 m high'),
  dutchSpeeds: law(
    'RVV 1990 art. 20 to 22: 50, 80, 100; 80 over 3.5 t where the certificate says commercial vehicle',
  ),
  dutchMotorway: told(
    'press: motorways 130 in law since 2012, signed 100 from 6 to 19 h since 16 March 2020',
  ),
  dutchGoods: law('RVV 1990 art. 1: a lorry is a vehicle not made for the carriage of persons'),
  dutchMass: told('Dutch motorists’ club on sign C21: mass as weighed'),
  dutchHeight: told('OpenStreetMap wiki, Key:maxheight:physical, on Dutch signs of 4.0 m and more'),
  belgianSpeeds: law('Brussels code of 2024 (undivided roads)'),
  belgianDivided: told(
    'Belgian press of 2007 and the map’s handbook: over 3.5 t 90 on divided roads and motorways',
  ),
  belgianMass: told('Belgian union of towns: C21 is the laden mass of every vehicle'),
  belgianGoods: law(
    'royal decree of 30 July 2022: since 1 October 2022 sign C23 names vehicles built for carrying goods',
  ),
  luxembourgSpeeds: told('OpenStreetMap wiki, Default speed limits: 90; 130, in the wet 110'),
  portugalSpeeds: law(
    'Código da Estrada, art. 27: heavy passenger vehicles 80, 90, 100; heavy goods 80, 80, 90',
  ),
  danishHeavy: told(
    'Danish ministry in the press: motorhomes 3.5 to 7.5 t 100 on motorways since 15 March 2018',
  ),
  swedishSpeeds: law(
    'Trafikförordning 4:20: limits for buses and lorries; none for a passenger car of any mass',
  ),
  norwaySpeeds: law('Norwegian road authority: motorhomes to 7.5 t have no limit of their own since 2016'),
  finnishSpeeds: told(
    'press on act 729/2018 § 99: vehicle limits lifted on 1 June 2020 for light motorhomes',
  ),
  polishSpeeds: told('Polish motoring press: the law names cars and lorries; 70, 80, 80 over 3.5 t'),
  czechSpeeds: law('Czech ministry on § 18, act 361/2000: over 3.5 t 80 on every road'),
  newZealandSpeeds: told('New Zealand motor caravan association: over 3500 kg 90'),
  newZealandSize: law('NZTA: motorhomes at most 4.3 m high, 2.55 m wide, 12.6 m long'),
  australiaGoods: law(
    'Australian Road Rules, r. 104 and dictionary: a no-trucks sign with a mass catches every vehicle over it but buses',
  ),
  australiaSpeeds: law('Australian Road Rules, r. 25'),
  usHeight: told('a legal reference: by state, 13 ft 6 in to 14 ft'),
  usUnsigned: told('MUTCD 2009 § 2C.27, as quoted: a sign is due under the legal height and 12 in'),
  usMass: told('MUTCD 2003, R12 signs: weight including load'),
  usLane: told('12 ft lanes of the Interstate standard'),
  ontarioHeight: law('Ontario: motor home 4.15 m; British Columbia alike'),
  dmurs: told('DMURS (Ireland), carriageways and corner radii'),
  manualForStreets: told('Manual for Streets, figure 7.1, and CD 123'),
  piarcLanes: told('PIARC report 05.11.B, table 5.1: 3.50 m lanes, 7.00 m carriageway'),
  germanRoads: told('RAS-Q and RASt 06, as quoted: 6.5 m state roads, 5.5 m village links and streets'),
  nactoCorners: told('NACTO: corner radii 10 to 15 ft; a suburban Ohio code 30 ft'),
} as const;

/** One cell of the table. `note` is what a reader must know beyond the figure, one or two sentences. */
export interface Cited<T> {
  readonly value: T;
  readonly source: Source;
  readonly note?: string;
}

/** Whether a cell may be told to a driver as a fact: somebody read it somewhere. */
export function isFact(cell: Cited<unknown>): boolean {
  return cell.source.trust !== 'memory';
}

/** A rule's value with where it comes from, and what its reader should know beside it. */
export function cite<T>(value: T, source: Source, note?: string): Cited<T> {
  return note === undefined ? { value, source } : { value, source, note };
}
