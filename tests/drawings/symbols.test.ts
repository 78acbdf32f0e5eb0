import { describe, expect, it } from 'vitest';
import {
  ChassisGround, Diode, Fuse, Jack, Lamp, Led, PolarisedCapacitor, ProtectiveEarth, REACH, RegulatorBlock, RelayCoil, Resistor, Switch, Winding,
} from '../../src/drawings/symbols.tsx';
import { markup } from './markup.ts';

const twoEnded = { Winding, Diode, Led, PolarisedCapacitor, Resistor, Fuse, RelayCoil, Lamp, Switch };
const place = { at: [100, 60] as const };

describe('schematic symbols', () => {
  it.each(Object.entries(twoEnded))('%s reaches its two terminals', (_, symbol) => {
    const drawn = markup(symbol(place));
    expect(drawn).toContain('translate(100 60)');
    expect(drawn).toContain(`M0 ${-REACH}V`);
    expect(drawn).toContain(`V${REACH}`);
    expect(drawn).toContain('class="part"');
  });

  it.each([['ChassisGround', ChassisGround], ['ProtectiveEarth', ProtectiveEarth], ['Jack', Jack]])('%s is drawn where it is put', (_, symbol) => {
    expect(markup(symbol(place))).toContain('translate(100 60)');
  });

  it('turns, and fades when it carries nothing', () => {
    expect(markup(Diode({ ...place, turn: 90 }))).toContain('rotate(90)');
    expect(markup(Diode({ ...place, idle: true }))).toContain('class="idle"');
    expect(markup(Diode(place))).not.toContain('idle');
  });

  it('writes the regulator’s name into its block', () => {
    expect(markup(RegulatorBlock({ ...place, name: '7812' }))).toContain('7812');
  });
});
