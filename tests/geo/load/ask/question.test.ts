import { describe, expect, it } from 'vitest';
import {
  askAt,
  askKg,
  askLitres,
  beginQuestion,
  piecesAsked,
  type Question,
} from '../../../../geo/load/ask/question.ts';
import { middleM } from '../../../../geo/load/places/spots.ts';
import { COACH_BUILT } from '../family.ts';

function begun(id: string): Question {
  const question = beginQuestion(COACH_BUILT, [], id);
  if (!question) throw new Error(`no choice ${id}`);
  return question;
}

describe('a question', () => {
  it('begins with one of the thing at its usual place', () => {
    expect(begun('e-bike')).toMatchObject({ one: { massKg: 25, place: 'rack' }, count: 1 });
    expect(begun('awning').one).toMatchObject({ xM: middleM(COACH_BUILT) });
    expect(begun('awning').one).not.toHaveProperty('place');
    expect(beginQuestion(COACH_BUILT, [], 'no such thing')).toBeUndefined();
  });

  it('about a liquid begins with 20 l in its tank; litres and kilograms follow each other', () => {
    const water = begun('fuel');
    expect(water.one).toMatchObject({ litres: 20, place: 'Fuel tank', kind: 'fuel' });
    expect(water.one.massKg).toBeCloseTo(16.6, 9);
    expect(askLitres(water, 50).one.massKg).toBeCloseTo(41.5, 9);
    expect(askKg(water, 8.3).one.litres).toBe(10);
    expect(askKg(water, -5).one).not.toHaveProperty('litres');
    expect(askLitres(water, -5).one).toMatchObject({ litres: 0, massKg: 0 });
  });

  it('is moved to the very metres that are typed', () => {
    expect(askAt(begun('e-bike'), COACH_BUILT, 3.333).one).toMatchObject({ xM: 3.333 });
    expect(askAt(begun('e-bike'), COACH_BUILT, 3.333).one).not.toHaveProperty('place');
  });

  it('about several people asks for a seat each', () => {
    const pieces = piecesAsked(COACH_BUILT, [], { ...begun('passenger'), count: 2 });
    expect(pieces.map(({ place }) => place)).toEqual(['Beside the driver', 'Bench, left']);
  });
});
