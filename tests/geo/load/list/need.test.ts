import { describe, expect, it } from 'vitest';
import { needOf } from '../../../../geo/load/list/need.ts';

describe('what is left behind first', () => {
  it('is what one can do without; clothes and food come last, medicine stays', () => {
    const need = (name: string) => needOf({ name });
    expect(['Awning with poles', 'Television', 'E-bike 2', 'Box 3', 'Wine'].map(need)).toEqual(
      Array(5).fill('may be left'),
    );
    expect(['Clothes', 'Food and drink', 'Bedding for one 2', 'Toolbox'].map(need)).toEqual(
      Array(4).fill('left last'),
    );
    expect(['Medicine box', 'Wheelchair', 'First-aid kit', 'Child seat'].map(need)).toEqual(
      Array(4).fill('never left'),
    );
  });

  it('is told by whole words', () => {
    expect(needOf({ name: 'Foodmixer' })).toBe('may be left');
  });
});
