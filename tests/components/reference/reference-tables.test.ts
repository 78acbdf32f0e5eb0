import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { fits } from '../../../src/components/reference/narrow-down.ts';
import { REFERENCE_TABLES } from '../../../src/components/reference/reference-tables.ts';
import { CALCULATORS } from '../../../src/widgets/registry.ts';

const json = (path: string): unknown => JSON.parse(readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8'));

describe('tables that technicians look up', () => {
  it.each(REFERENCE_TABLES.map((table) => [table.title, table] as const))('%s: every row fills its columns with readable cells and names a source', (_, table) => {
    const sources = json('content/sources.json') as Record<string, unknown>;
    expect(table.rows.length).toBeGreaterThan(2);
    for (const { cells, sourceId } of table.rows) {
      expect(cells).toHaveLength(table.columns.length);
      for (const cell of cells) expect(cell).not.toMatch(/NaN|undefined|Infinity|^\s*$/);
      expect(Object.keys(sources)).toContain(sourceId);
    }
  });

  it('has ids of its own for every table', () => {
    const ids = REFERENCE_TABLES.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  it('gives printed figures: a 400 Ω 12 V coil draws 30 mA; a small double triode takes 300 mA at 6.3 V', () => {
    const row = (id: string, name: string): readonly string[] | undefined =>
      REFERENCE_TABLES.find((table) => table.id === id)?.rows.find(({ cells }) => cells[0]?.startsWith(name))?.cells;
    expect(row('coils', 'Small relay, 360 mW, 12 V')?.[2]).toBe('30\u00A0mA');
    expect(row('heaters', '12AX7')?.[1]).toBe('6.3\u00A0V 300\u00A0mA or 12.6\u00A0V 150\u00A0mA');
  });

  it('never counts a valve whose cathode is at the high voltage as an ordinary heater', () => {
    const heaters = REFERENCE_TABLES.find(({ id }) => id === 'heaters')?.rows ?? [];
    const rectifiers = heaters.filter(({ cells }) => /5U4|GZ34|5Y3/.test(cells[0] ?? ''));
    expect(rectifiers.length).toBeGreaterThan(0);
    for (const { cells } of rectifiers) expect(cells[2]).toMatch(/at the high voltage/);
  });
});

describe('symptoms', () => {
  const symptoms = json('content/symptoms.json') as { says: string; calculators: string[]; lessons: string[] }[];
  const course = json('content/course.json') as { units: { lessons: { slug: string }[] }[] };
  const calculators = (json('content/calculators.json') as { slug: string }[]).map(({ slug }) => slug);

  it.each(symptoms.map((symptom) => [symptom.says, symptom] as const))('%s: leads to calculators and lessons that the course has', (_, symptom) => {
    const lessons = course.units.flatMap((unit) => unit.lessons.map(({ slug }) => slug));
    for (const slug of symptom.lessons) expect(lessons).toContain(slug);
    for (const slug of symptom.calculators) expect(calculators).toContain(slug);
    expect(symptom.calculators.length).toBeGreaterThan(0);
  });
});

describe('narrowing the page down', () => {
  it('wants every word, in any order, whatever the case, the accents and the kind of space', () => {
    expect(fits('12ax7 heater', 'Heater of the 12AX7 / ECC83')).toBe(true);
    expect(fits('300 mA', '6.3\u00A0V 300\u00A0mA')).toBe(true);
    expect(fits('6,3', '6.3 V')).toBe(true);
    expect(fits('12ax7 relay', '12AX7 / ECC83')).toBe(false);
    expect(fits('  ', 'anything')).toBe(true);
  });

  it('finds every calculator by its own question', () => {
    for (const { question } of CALCULATORS) expect(fits(question, question)).toBe(true);
  });
});
