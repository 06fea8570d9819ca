import type { LocalMoment } from '../../clock/moment.ts';
import { countryOf } from '../../country/country-of.ts';
import { ferrySpeed } from '../../drive/times/ferry-speed.ts';
import type { Place } from '../../earth/sphere.ts';
import { wayAlong } from '../../graph/road-graph.ts';
import { lastOrZero } from '../../lists.ts';
import { mappedOn } from '../../roads/mapped-on.ts';
import { type Roads, type Tags, WAY_KIND } from '../../roads/roads.ts';
import { isJunction } from '../../rules/access/junction.ts';
import { isRestricted } from '../../rules/end-runs.ts';
import { isAccessKey } from '../../tags/access.ts';
import { mayBeLimit } from '../../tags/limit-key.ts';
import { onewayFor } from '../../tags/oneway.ts';
import { isSiteRoad, RANK, rankOf } from '../../tags/road-class.ts';
import { isGate } from '../graph/split-nodes.ts';
import { rulesFor } from './ask-rules.ts';
import type { Asker } from './asked-alone.ts';
import { FREE, type Judged, judge, OPEN } from './judged.ts';
import { type Pace, paceOf } from './pace.ts';
import type { Prefer } from './prices.ts';
import { hasDirection, isRead, paceSignature, ruleSignature, tagSignature } from './tag-signature.ts';

/** What a road belongs to: open country, a site (service roads and tracks), ground that only some may enter. */
export const GROUND = { open: 0, site: 1, restricted: 2 } as const;

/** One kind of road, in one direction, for one vehicle. */
export interface RoadKind extends Judged, Pace {
  readonly ground: number;
  readonly ferry: boolean;
  /** no rule has been asked: it may be dearer, or closed */
  readonly guessed: boolean;
}

/** The side of the squares in which the country is looked up once. Degrees. */
const COUNTRY_CELL_DEG = 0.02;

export interface JudgeOptions {
  readonly prefer: Prefer;
  /** stands in where the place tells no country */
  readonly country?: string | undefined;
}

/** A road in one direction, and when. */
interface AskedWay {
  readonly way: number;
  readonly forward: boolean;
  readonly at: Place;
  readonly country: string | undefined;
  readonly moment: LocalMoment | undefined;
}

/** Country, direction and signature in one number; where the clock or a ferry's length counts, a text. */
type KindKey = number | string;
/** Many more than any map has. */
const MOST_SIGNATURES = 2 ** 30;

/** What one vehicle was told of roads and points, by their tags: it outlives the map they were first met on. */
export interface JudgeMemo {
  /** tag signatures, numbered */
  readonly signatures: Map<string, number>;
  /** by signature */
  readonly directed: boolean[];
  readonly countries: Map<string | undefined, number>;
  readonly kinds: Map<KindKey, RoadKind>;
  /** what was held of kinds before they were judged */
  readonly guesses: Map<KindKey, RoadKind>;
  /** by what hangs on nothing but a road's speed and width: far fewer than kinds */
  readonly paces: Map<string, Pace>;
  /** what the rules say, without the speed */
  readonly roads: Map<string, Judged>;
  readonly points: Map<string, Judged>;
}

/**
 * Judges roads and points for one vehicle by the checker's own rules, each distinct set of tags once.
 * The clock, where it is asked for, is given with the question.
 */
export class RoadJudge {
  /** by way: what its signature is known by in the memo, one more; 0 where it has not been met */
  private readonly signatures: Uint32Array;
  private readonly countries = new Map<number, string | undefined>();

  constructor(
    private readonly roads: Roads,
    readonly asker: Asker,
    private readonly options: JudgeOptions,
    private readonly memo: JudgeMemo,
  ) {
    this.signatures = new Uint32Array(roads.ways.count);
  }

  /** A road as its tags have it, `moment` undefined: whatever hangs on the clock is open. */
  roadKind(way: number, driven: boolean, moment?: LocalMoment): RoadKind {
    const { asked, key } = this.askedWay(way, driven, moment);
    const known = this.memo.kinds.get(key);
    if (known !== undefined) return known;
    const made = this.judgeRoad(asked, this.memo.guesses.get(key) ?? this.pace(asked));
    this.memo.kinds.set(key, made);
    return made;
  }

  /**
   * The same before any rule is asked: as fast as it is, and open wherever it looks as if it were. Judged it is never
   * less dear, and never open to more.
   */
  guessKind(way: number, driven: boolean): RoadKind {
    const { asked, key } = this.askedWay(way, driven, undefined);
    const known = this.memo.kinds.get(key) ?? this.memo.guesses.get(key);
    if (known !== undefined) return known;
    const guess = guessOf(this.tagsOf(way), asked.forward);
    if (guess === undefined) return this.roadKind(way, driven);
    const made = { ...guess, ...this.pace(asked), ferry: this.isFerry(way), guessed: true };
    this.memo.guesses.set(key, made);
    return made;
  }

  private askedWay(
    way: number,
    driven: boolean,
    moment: LocalMoment | undefined,
  ): { readonly asked: AskedWay; readonly key: KindKey } {
    const signature = this.signature(way);
    const forward = driven || !this.isDirected(signature, way);
    const at = this.placeOf(this.roads.ways.refs[this.roads.ways.start[way]!]!);
    const country = this.countryAt(at);
    const asked = { way, forward, at, country, moment };
    if (this.isFerry(way) || moment !== undefined) {
      const ferryM = wayLengthM(this.roads, way);
      return { asked, key: `${country}|${forward}|${ferryM}|${clockKey(moment, at)}|${signature}` };
    }
    return { asked, key: (this.numberOf(country) * MOST_SIGNATURES + signature) * 2 + (forward ? 1 : 0) };
  }

  /** A point passed at the end of a road. */
  point(node: number, way: number, forward: boolean, moment?: LocalMoment): Judged {
    const tags = this.roads.nodes.tags.get(node);
    if (tags === undefined || !isGate(tags)) return FREE;
    const at = this.placeOf(node);
    const country = this.countryAt(at);
    const junction = isJunction(this.roads, node);
    const key = `${country}|${forward}|${junction}|${clockKey(moment, at)}|${ruleSignature(tags)}|${ruleSignature(this.tagsOf(way))}`;
    const known = this.memo.points.get(key);
    if (known !== undefined) return known;
    const wayTags = this.tagsOf(way);
    const made = this.ask({
      wayTags,
      kind: this.roads.ways.kind[way]!,
      forward,
      nodeTags: tags,
      junction,
      at,
      country,
      moment,
    });
    this.memo.points.set(key, made);
    return made;
  }

  countryAt({ lat, lon }: Place): string | undefined {
    const cell = Math.floor(lat / COUNTRY_CELL_DEG) * 100_000 + Math.floor(lon / COUNTRY_CELL_DEG);
    if (!this.countries.has(cell)) this.countries.set(cell, countryOf(lat, lon) ?? this.options.country);
    return this.countries.get(cell);
  }

  placeOf(node: number): Place {
    return { lat: this.roads.nodes.lat[node]!, lon: this.roads.nodes.lon[node]! };
  }

  tagsOf(way: number): Tags {
    return mappedOn(this.roads, way);
  }

  private numberOf(country: string | undefined): number {
    const { countries } = this.memo;
    const known = countries.get(country) ?? countries.size;
    countries.set(country, known);
    return known;
  }

  /** Whether roads of a signature are another matter driven the other way. */
  private isDirected(signature: number, way: number): boolean {
    const { directed } = this.memo;
    const known = directed[signature] ?? hasDirection(this.tagsOf(way));
    directed[signature] = known;
    return known;
  }

  /** A short name for a way's signature: long texts make slow keys. */
  private signature(way: number): number {
    if (this.signatures[way] === 0) {
      const text = tagSignature(this.tagsOf(way));
      const known = this.memo.signatures.get(text) ?? this.memo.signatures.size;
      this.memo.signatures.set(text, known);
      this.signatures[way] = known + 1;
    }
    return this.signatures[way]! - 1;
  }

  private ask(asked: {
    readonly wayTags: Tags;
    readonly kind: number;
    readonly forward: boolean;
    readonly nodeTags?: Tags;
    readonly junction: boolean;
    readonly at: Place;
    readonly country: string | undefined;
    readonly moment: LocalMoment | undefined;
  }): Judged {
    let clocked = false;
    const onClock = () => {
      clocked = true;
    };
    return judge(rulesFor({ ...asked, onClock }, this.asker), () => clocked);
  }

  /** What the rules say of a road: once for all that differ in their speeds alone. */
  private rulesOn(asked: AskedWay, tags: Tags, kind: number): Judged {
    const { forward, at, country, moment } = asked;
    const key = `${country}|${forward}|${kind}|${clockKey(moment, at)}|${ruleSignature(tags)}`;
    const known = this.memo.roads.get(key);
    if (known !== undefined) return known;
    const made = this.ask({ ...asked, wayTags: tags, kind, junction: false });
    this.memo.roads.set(key, made);
    return made;
  }

  /** How fast a road is, and what that counts: once for all that differ in nothing of that. */
  private pace({ way, forward, country }: AskedWay): Pace {
    const tags = this.tagsOf(way);
    if (this.isFerry(way)) {
      const timePerM = 36 / ferrySpeed(tags, wayLengthM(this.roads, way)).kmh;
      return { timePerM, costPerM: timePerM };
    }
    const key = `${country}|${forward}|${paceSignature(tags)}`;
    const known = this.memo.paces.get(key);
    if (known !== undefined) return known;
    const made = paceOf({ tags, forward, country }, this.asker.card, this.options.prefer);
    this.memo.paces.set(key, made);
    return made;
  }

  private isFerry(way: number): boolean {
    return this.roads.ways.kind[way] === WAY_KIND.ferry;
  }

  private judgeRoad(asked: AskedWay, { timePerM, costPerM }: Pace): RoadKind {
    const { way, forward } = asked;
    const tags = this.tagsOf(way);
    const judged = this.rulesOn(asked, tags, this.roads.ways.kind[way]!);
    // a limit lifted for those who go there is lifted within the run of roads that carry it
    const restricted = judged.open === OPEN.atEnds || isRestricted({ tags, forward });
    const ground = restricted ? GROUND.restricted : isSiteRoad(tags) ? GROUND.site : GROUND.open;
    return { ...judged, ground, timePerM, costPerM, ferry: this.isFerry(way), guessed: false };
  }
}

const BY_CLOCK_OR_SIGN = /^oneway.*:conditional$|^traffic_sign/;

/** What a road looks like from its tags; undefined where they hold a word on who may pass, a limit or a sign. */
function guessOf(tags: Tags, forward: boolean): (Judged & Pick<RoadKind, 'ground'>) | undefined {
  if (rankOf(tags['highway']) > RANK.service) return undefined;
  for (const key in tags)
    if (isRead(key) && (isAccessKey(key) || mayBeLimit(key) || BY_CLOCK_OR_SIGN.test(key))) return undefined;
  // the access rule bars what is against a one-way by the same reading
  const against = onewayFor({ tags, forward }).allowed === 'no';
  return {
    ...FREE,
    open: against ? OPEN.never : OPEN.always,
    ground: isSiteRoad(tags) ? GROUND.site : GROUND.open,
  };
}

function wayLengthM(roads: Roads, way: number): number {
  return lastOrZero(wayAlong(roads, way));
}

/** The minute, and roughly where: some hours go by the sun. */
function clockKey(moment: LocalMoment | undefined, { lat, lon }: Place): string {
  if (moment === undefined) return '';
  const { year, month, day, hour, minute } = moment;
  return `${year}-${month}-${day} ${hour}:${minute} ${Math.round(lat)} ${Math.round(lon)}`;
}
