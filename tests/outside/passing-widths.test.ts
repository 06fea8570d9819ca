import { describe, expect, it } from 'vitest';
import { width } from '../../geo/rules/limits/width.ts';
import { narrow } from '../../geo/rules/road/narrow.ts';
import { askRoad, COACHBUILT } from '../support/ask.ts';

const CAR = { ...COACHBUILT, widthM: 1.8, widthMirrorsM: 2.05, widthMirrorsFoldedM: 1.85 };
const A_RIGID = { ...COACHBUILT, widthM: 2.5, widthMirrorsM: 2.8, widthMirrorsFoldedM: 2.55 };
const said = (card: typeof COACHBUILT, roadM: number) =>
  askRoad(narrow, { width: String(roadM) }, { card }).map(({ folded }) =>
    folded ? 'with care' : 'give way',
  );

describe('who passes whom on which width', () => {
  // Manual for Streets, figure 7.1 (second-hand): 4.1 m two cars, 4.8 m a car and a lorry
  it('two cars do not pass freely on 4.1 m but pass, below they do not', () => {
    expect(said(CAR, 4.4)).toEqual(['with care']);
    expect(said(CAR, 4.0)).toEqual(['give way']);
    expect(said(CAR, 5.0)).toEqual([]);
  });

  it('a car and a vehicle as wide as a lorry give way on 4.8 m, since mirrors stand out beyond the figure', () => {
    expect(said(A_RIGID, 4.8)).toEqual(['give way']);
    expect(said(A_RIGID, 5.5)).toEqual(['with care']);
  });

  // the passing-room test of the trade: own mirrors + a car's 2.05 m + three gaps of 0.3 m; common practice, no source
  it.each([
    [2.8, 5.75],
    [2.5, 5.45],
    [2.3, 5.25],
  ])('mirrors of %d m pass a car freely from %d m on', (widthMirrorsM, needM) => {
    const card = { ...COACHBUILT, widthM: 2.05, widthMirrorsFoldedM: 2.2, widthMirrorsM };
    expect(said(card, needM)).toEqual([]);
    expect(said(card, needM - 0.01)).toEqual(['with care']);
  });

  // Key:width against Key:maxwidth on the OSM wiki: a carriageway's width is no limit
  it('a road of 3.5 m, the usual single track with passing places, is narrow and no bar', () => {
    expect(askRoad(narrow, { width: '3.5', lanes: '1' }).map(({ level }) => level)).toEqual(['care']);
    expect(askRoad(width, { width: '2.2', lanes: '1', est_width: '2' })).toEqual([]);
  });

  // Traffic Signs Manual chapter 3 (2008), 5.35: 6'6" is the usual figure of environmental width limits
  it('6\'6" bars every coach-built body; 7\'0" lets a 2.05 m body through with its mirrors over', () => {
    const van = { ...COACHBUILT, widthM: 2.05, widthMirrorsM: 2.474, widthMirrorsFoldedM: 2.2 };
    const limit = (maxwidth: string, card: typeof COACHBUILT) =>
      askRoad(width, { maxwidth }, { card, country: 'GB' })[0]?.level;
    expect(limit('6\'6"', COACHBUILT)).toBe('barred');
    expect(limit('6\'6"', van)).toBe('barred');
    expect(limit('7\'0"', van)).toBe('tight');
  });
});
