/** For a figure that no published text was read for. It is used, and it is said so. */
export const FROM_MEMORY = 'from memory, to confirm';
/** For what the trade does and no text lays down. */
export const COMMON_PRACTICE = 'common practice, no source';

/**
 * The published texts behind the table, each with what was read there.
 * A cell can name one of these or one of the two above and nothing else: a cell without a source does not compile.
 */
export const SOURCES = {
  govUkSpeeds: 'gov.uk, Speed limits: motorhomes or motor caravans up to and over 3.05 t unladen',
  govWales: 'gov.wales: 20 mph on restricted roads since September 2023',
  hseHeight: 'HSE workplace transport, height: standard clearance of public roads 16 ft 6 in (5.03 m)',
  trafficSignsManual3: 'Traffic Signs Manual chapter 3 (2008), width and weight signs',
  cAndU: 'Road Vehicles (Construction and Use) Regulations 1986 as quoted by owners: mirrors are not width',
  irelandRules: 'Rules of the Road (rotr.ie), speed limits for vehicles',
  irelandHeight: 'S.I. 366 of 2008, as announced by Dublin City Council: 4.65 m since November 2013',
  irelandWidth: 'legalblog.ie on the construction and use regulations: mirrors are disregarded',
  osmMaxheight: 'OpenStreetMap wiki, Key:maxheight, value default',
  osmSpeeds: 'OpenStreetMap wiki, Default speed limits (2022 and 2023)',
  franceSpeeds: 'Décret 92-1227, article R. 10-1 (now R. 413-8), and FFCC on motor caravans over 3.5 t',
  franceMass: 'FFCC on the B13 sign: plated mass (PTAC)',
  franceGoods: 'Arrêté of 24 November 1967, article 4: goods signs name vehicles for the carriage of goods',
  germanHeight: 'StVZO § 32 and StVO § 22, as quoted by the insurers (GDV)',
  germanSpeeds: 'StVO § 3 and § 18, 12. Ausnahmeverordnung zur StVO (2005)',
  germanGoods: 'StVO Anlage 2, Zeichen 253: over 3.5 t plated, cars and buses excepted',
  germanSigns: 'StVO Anlage 2, Zeichen 262 to 266: actual figures, load included',
  germanWidth: 'StVO Anlage 2, Zeichen 264: actual width includes the outside mirrors',
  spainSpeeds: 'Reglamento General de Circulación, art. 48 (RD 1514/2018), as reported',
  spainUrban: 'RD 970/2020: 30 km/h in streets with one lane each way',
  spainGoods: 'DGT sign list, R-106: vehicles for the carriage of goods',
  italySpeeds: 'Codice della strada, art. 142, as reported',
  italyGoods: 'Regolamento, fig. II 60/a: vehicles not for the carriage of persons; motor caravans are free',
  austriaSpeeds: 'KDV 1967 § 58 (ris.bka.gv.at)',
  austriaGoods: 'ÖAMTC 2005: lorry bans do not bind motor caravans, mass signs do',
  austriaMass: 'ÖAMTC, as quoted by a German owners’ club in 2023: actual mass',
  swissSpeeds: 'Swiss camping club (SCCV) on VRV art. 5: heavy motor caravans 100 km/h on motorways',
  swissGoods: 'SSV art. 19: heavy motor vehicles for the carriage of goods',
  swissMass: 'SSV art. 20: operating mass, as it stands on the road',
  swissHeight: 'SVG art. 9: 4 m; 4.50 m clearance by one canton’s rule',
  dutchSpeeds: 'RVV 1990 art. 22 (80 km/h where the certificate says commercial vehicle)',
  dutchGoods: 'RVV 1990 art. 1: a lorry is a vehicle not made for the carriage of persons',
  dutchMass: 'ANWB on sign C21: mass as weighed',
  dutchHeight: 'OpenStreetMap wiki, Key:maxheight:physical, on Dutch signs of 4.0 m and more',
  belgianHeight: 'transportbelgie.info: 4.00 m',
  belgianMass: 'Belgian driving course: C21 is laden mass, other mass plates the permitted mass',
  belgianGoods: 'VRT 2023 on sign C23: lorries, by permitted mass',
  usHeight: 'legalclarity.org: by state, 13 ft 6 in to 14 ft; no national clearance',
  usMass: 'MUTCD 2003, R12 signs: weight including load',
  usLane: '12 ft lanes of the Interstate standard, second-hand',
  dmurs: 'DMURS (Ireland), carriageways and corner radii, second-hand',
  manualForStreets: 'Manual for Streets, figure 7.1, and CD 123, second-hand',
  piarcLanes: 'PIARC report 05.11.B, table 5.1: 3.50 m lanes, 7.00 m carriageway',
  nactoCorners: 'NACTO: corner radii 10 to 15 ft; a suburban Ohio code 30 ft',
} as const;

export type Source = (typeof SOURCES)[keyof typeof SOURCES] | typeof FROM_MEMORY | typeof COMMON_PRACTICE;

/** One cell of the table. `note` is what a reader must know beyond the figure, one or two sentences. */
export interface Cited<T> {
  readonly value: T;
  readonly source: Source;
  readonly note?: string;
}

/** A rule's value with where it comes from, and what its reader should know beside it. */
export function cite<T>(value: T, source: Source, note?: string): Cited<T> {
  return note === undefined ? { value, source } : { value, source, note };
}
