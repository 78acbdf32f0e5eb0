import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { caseIn, handOnPath, readCase, withCase, writeCase } from '../../../src/widgets/shared/address.ts';
import { evaluate, open } from '../../../src/widgets/shared/evaluate.ts';
import { rawFields, type RawFields } from '../../../src/widgets/shared/raw-fields.ts';
import { divider } from './divider.ts';

const opened = open(divider);
const worked = opened.raw;

const cell = fc.oneof(fc.constantFrom('', '~', '!', '*', '_', '__', '_n', '_t', '%2A', '+', '&', '=', '4k7', '12 V', 'µ'), fc.string({ maxLength: 20 }));
const anyFields: fc.Arbitrary<RawFields> = fc.record({
  inputVolts: cell,
  topOhms: cell,
  kind: fc.constantFrom('plain', 'loaded'),
  ratedWatts: cell,
  note: cell,
  loads: fc.array(fc.record({ name: cell, amps: cell }), { maxLength: 4 }),
});

describe('the state in the address', () => {
  it('is nothing at all for the worked case', () => {
    expect(writeCase(divider, worked)).toBeUndefined();
    expect(withCase('', 'divider', writeCase(divider, worked))).toBe('');
  });

  it('holds only what differs, readably', () => {
    const text = writeCase(divider, { ...worked, topOhms: '4k7', loads: [{ name: 'Relay', amps: '33 mA' }, { name: 'Lamp', amps: '20 mA' }] });
    expect(text).toBe('2~topOhms.4k7~loads.Relay*33 mA!*20 mA');
    expect(withCase('?page=3', 'divider', text)).toBe('?page=3&divider=2~topOhms.4k7~loads.Relay*33+mA!*20+mA');
  });

  it('gives back exactly what was typed, through the query, for any text', () => {
    fc.assert(
      fc.property(anyFields, (raw) => {
        const search = withCase('?other=1', 'divider', writeCase(divider, raw));
        const text = caseIn(search, 'divider');
        expect(text === undefined ? worked : readCase(divider, text)).toEqual(raw);
        expect(caseIn(search, 'other')).toBe('1');
      }),
      { numRuns: 500 },
    );
  });

  it('gives back a case over another that the page opens on', () => {
    const initial = rawFields(divider.fields, { inputVolts: 24, kind: 'loaded' });
    fc.assert(
      fc.property(anyFields, (raw) => {
        const text = writeCase(divider, raw, initial);
        expect(text === undefined ? initial : readCase(divider, text, initial)).toEqual(raw);
      }),
    );
  });

  it('does not read another version', () => {
    expect(readCase(divider, '1~topOhms.4k7')).toBeUndefined();
    expect(readCase(divider, '')).toBeUndefined();
  });

  it('leaves out what it does not know', () => {
    expect(readCase(divider, '2~__proto__.x~constructor.y~nothing~.~kind.round~topOhms.1k')).toEqual({ ...worked, topOhms: '1k' });
  });

  it('holds its limits: rows, length of a text, length of all', () => {
    const raw = readCase(divider, `2~loads.${'a!'.repeat(5000)}~note.${'n'.repeat(5000)}`);
    expect(raw?.['loads']).toHaveLength(4);
    expect(String(readCase(divider, `2~note.${'n'.repeat(5000)}`)?.['note']).length).toBeLessThanOrEqual(120);
  });

  it('takes any address whatever: nothing is thrown and the last good result stays or a new one comes', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string(), fc.string().map((tail) => `2~${tail}`), fc.array(cell).map((parts) => `2~topOhms.${parts.join('~')}`)), (text) => {
        const search = `?divider=${encodeURIComponent(text)}`;
        const raw = readCase(divider, caseIn(search, 'divider') ?? '');
        if (raw === undefined) return;
        const after = evaluate(divider, raw, opened);
        expect(Number.isFinite(after.view.volts)).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('hands a result on as the path of another calculator', () => {
    expect(handOnPath(divider, { inputVolts: 15 })).toBe('calculators/divider/?divider=2~inputVolts.15+V');
    expect(handOnPath(divider, {})).toBe('calculators/divider/');
  });
});
