/** Units a field can ask for. The value behind each is in SI (`%` is a ratio, `°C` degrees Celsius). */
export type Unit =
  | 'V' | 'A' | 'Ω' | 'F' | 'H' | 'Hz' | 'W' | 'VA' | 's' | 'J' | 'm' | 'm²' | '°C' | 'K/W' | 'A²s' | '%' | '';

export interface UnitFact {
  /** The unit in words, as a reader is told. */
  readonly names: string;
  /** How a value of this kind is written, for a refusal to show. */
  readonly example: string;
  /** Spellings of the unit itself, lower case, longest first; a decimal prefix may stand before each. */
  readonly spellings: readonly string[];
  /** Whether kilo, milli and the others are used with it. */
  readonly prefixed: boolean;
  /** What a capital M before it means: mega where that is a usual size, refused where milli is the likely intent. */
  readonly capitalM: 'mega' | 'refuse';
  /** What a small m before it means: milli, or refused where mega is the likely intent. */
  readonly smallM: 'milli' | 'refuse';
  /** Other units of the same kind, lower case, with the factor (and for a temperature the offset) to the SI unit. */
  readonly others?: Readonly<Record<string, { readonly factor: number; readonly offset?: number }>>;
}

const plain = { prefixed: false, capitalM: 'refuse', smallM: 'refuse' } as const;
const milli = { prefixed: true, capitalM: 'refuse', smallM: 'milli' } as const;

export const UNITS: Readonly<Record<Unit, UnitFact>> = {
  V: { names: 'volts', example: '12 V', spellings: ['volts', 'volt', 'v'], ...milli },
  A: { names: 'amps', example: '300 mA', spellings: ['amperes', 'ampere', 'amps', 'amp', 'a'], ...milli },
  Ω: { names: 'ohms', example: '4k7', spellings: ['ohms', 'ohm', 'Ω', 'r'], prefixed: true, capitalM: 'mega', smallM: 'milli' },
  F: { names: 'farads', example: '4700 µF', spellings: ['farads', 'farad', 'f'], ...milli },
  H: { names: 'henries', example: '10 mH', spellings: ['henries', 'henrys', 'henry', 'h'], ...milli },
  Hz: { names: 'hertz', example: '50 Hz', spellings: ['hertz', 'hz'], prefixed: true, capitalM: 'mega', smallM: 'refuse' },
  W: { names: 'watts', example: '0.6 W', spellings: ['watts', 'watt', 'w'], ...milli },
  VA: { names: 'volt-amps', example: '6 VA', spellings: ['va'], ...milli },
  s: {
    names: 'seconds', example: '20 s', spellings: ['seconds', 'second', 'secs', 'sec', 's'], ...milli,
    others: {
      minutes: { factor: 60 }, minute: { factor: 60 }, mins: { factor: 60 }, min: { factor: 60 },
      hours: { factor: 3600 }, hour: { factor: 3600 }, hrs: { factor: 3600 }, hr: { factor: 3600 }, h: { factor: 3600 },
    },
  },
  J: { names: 'joules', example: '5 J', spellings: ['joules', 'joule', 'j'], ...milli },
  m: {
    names: 'metres', example: '600 mm', spellings: ['metres', 'metre', 'meters', 'meter', 'm'], ...milli,
    others: { cm: { factor: 0.01 }, in: { factor: 0.0254 }, inch: { factor: 0.0254 }, inches: { factor: 0.0254 } },
  },
  'm²': {
    names: 'square millimetres', example: '0.5 mm²', spellings: ['m²', 'm2', 'm^2'], ...plain,
    others: { 'mm²': { factor: 1e-6 }, mm2: { factor: 1e-6 }, 'mm^2': { factor: 1e-6 }, sqmm: { factor: 1e-6 } },
  },
  '°C': {
    names: 'degrees Celsius', example: '55 °C', spellings: ['°celsius', 'celsius', 'degc', '°c', 'c'], ...plain,
    others: Object.fromEntries(
      ['°f', 'degf', 'f', 'fahrenheit'].map((spelling) => [spelling, { factor: 5 / 9, offset: -32 }]),
    ),
  },
  'K/W': { names: 'kelvin per watt', example: '9.5 K/W', spellings: ['k/w', '°c/w', 'degc/w', 'c/w'], ...plain },
  'A²s': { names: 'ampere-squared seconds', example: '1.7 A²s', spellings: ['a²s', 'a2s', 'a^2s', 'a²·s'], ...plain },
  '%': { names: 'percent', example: '10 %', spellings: [], ...plain, others: { '%': { factor: 0.01 }, percent: { factor: 0.01 } } },
  '': { names: 'a plain number', example: '2', spellings: [], ...plain, others: { '%': { factor: 0.01 }, percent: { factor: 0.01 } } },
};

const PREFIXES: Readonly<Record<string, number>> = {
  p: -12, P: -12, pico: -12,
  n: -9, N: -9, nano: -9,
  µ: -6, u: -6, U: -6, micro: -6,
  m: -3, milli: -3,
  k: 3, K: 3, kilo: 3, kil: 3,
  M: 6, mega: 6, meg: 6,
  G: 9, giga: 9,
};

/** A unit as read: decimal exponent and plain factor to SI, or the reason it cannot be told. */
export type UnitReading =
  | { readonly exponent: number; readonly factor: number; readonly offset: number }
  | { readonly unclear: string };

const scaled = (exponent: number): UnitReading => ({ exponent, factor: 1, offset: 0 });

function readPrefix(prefix: string, unit: Unit, symbol: string): UnitReading | undefined {
  if (prefix === '') return scaled(0);
  const fact = UNITS[unit];
  const exponent = PREFIXES[prefix.length > 1 ? prefix.toLowerCase() : prefix];
  if (!fact.prefixed || exponent === undefined) return undefined;
  if (prefix === 'M' && fact.capitalM === 'refuse') {
    return { unclear: `M means a million: write m${symbol || unit} for thousandths` + (unit === 'F' ? ', µF for millionths' : '') };
  }
  if (prefix === 'm' && fact.smallM === 'refuse') {
    return { unclear: `m means a thousandth: write M${symbol || unit} for millions` };
  }
  return scaled(exponent);
}

/**
 * Reads the letters behind a number as `unit`, with or without prefix; `undefined` when they are not that unit.
 * `letters` has no spaces in it. Case is used only where it makes a difference (m and M).
 */
export function readUnit(letters: string, unit: Unit): UnitReading | undefined {
  const fact = UNITS[unit];
  const lower = letters.toLowerCase().replaceAll('ω', 'Ω');
  const other = fact.others?.[lower];
  if (other !== undefined) return { exponent: 0, factor: other.factor, offset: other.offset ?? 0 };
  if (unit === 'F') {
    // Old parts are marked MFD or mF for microfarads and mmF for picofarads.
    if (lower === 'mfd') return scaled(-6);
    if (letters === 'mf' || letters === 'MF' || lower === 'mmf' || lower === 'mmfd') {
      return { unclear: `${letters} meant microfarads on old parts and means millifarads or nothing today: write µF, nF or pF` };
    }
  }
  for (const spelling of fact.spellings) {
    if (!lower.endsWith(spelling)) continue;
    const reading = readPrefix(letters.slice(0, letters.length - spelling.length), unit, spelling.length > 2 ? '' : unit);
    if (reading !== undefined) return reading;
  }
  return undefined;
}

/**
 * Reads a prefix that stands alone, as in `2200u` or `1.5 k`, in a field of `unit`.
 * A lone m is refused in a field of ohms (milli or mega?) and in a field of time (milli or minutes?).
 */
export function readBarePrefix(letters: string, unit: Unit): UnitReading | undefined {
  if (letters === 'm' && unit === 'Ω') return { unclear: 'm can be meant as milli or mega here: write mΩ or MΩ' };
  if (letters === 'm' && unit === 's') return { unclear: 'm can be meant as milliseconds or minutes: write ms or min' };
  return letters === '' ? undefined : readPrefix(letters, unit, '');
}
