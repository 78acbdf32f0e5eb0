import { InputError } from '../errors.ts';
import { formatQuantity } from './format.ts';
import { plainText, readDigits, readFraction } from './numeral.ts';
import { UNITS, readBarePrefix, readUnit } from './units.ts';
import type { Unit, UnitReading } from './units.ts';

/** A text read as a quantity. */
export interface ParsedQuantity {
  readonly ok: true;
  /** In SI units; a ratio for `%`. */
  readonly value: number;
  /** The unit taken for a bare number, when none was written. */
  readonly assumed?: string;
  /** AC or DC, when the text says so. */
  readonly current?: 'AC' | 'DC';
}

/** Why a text was not taken, in a sentence for the reader, and of which kind the trouble is. */
export interface RefusedQuantity {
  readonly ok: false;
  readonly problem: 'empty' | 'not-a-number' | 'ambiguous' | 'wrong-unit' | 'out-of-range';
  readonly reason: string;
}

export interface ParseOptions {
  readonly text: string;
  /** What the field asks for. */
  readonly unit: Unit;
  /** Unit of a bare number, where the field states one: `µF`, `mA`. Default: the SI unit, percent for `%`. */
  readonly assume?: string;
  /** Inclusive limits, SI. */
  readonly min?: number;
  readonly max?: number;
  /** Exclusive lower limit, SI: 0 for a quantity that must be positive. */
  readonly above?: number;
  /** Set where the field is about alternating or direct current, to refuse the other. */
  readonly expects?: 'AC' | 'DC';
}

/** Digits as decimal text with the scale that their unit gives them. */
interface Reading {
  readonly decimal: string;
  readonly scale: { readonly exponent: number; readonly factor: number; readonly offset: number };
  readonly assumed?: string;
}

const refuse = (problem: RefusedQuantity['problem'], reason: string): RefusedQuantity => ({ ok: false, problem, reason });

const notANumber = (written: string, unit: Unit): RefusedQuantity =>
  refuse('not-a-number', `“${written}” is not a number: give ${UNITS[unit].names}, for example ${UNITS[unit].example}`);

const WORDS = /\s*(?:\b|(?<=[va]))(ac|dc|rms|r\.m\.s\.|pk-pk|p-p|pp|pk|peak)$/i;

/** Takes AC, DC, RMS and peak off the end of the letters. */
function splitWords(tail: string): { letters: string; current?: 'AC' | 'DC'; peak: boolean } {
  let letters = tail.trim();
  let current: 'AC' | 'DC' | undefined;
  let peak = false;
  for (let match = WORDS.exec(letters); match !== null; match = WORDS.exec(letters)) {
    const word = (match[1] ?? '').toLowerCase();
    letters = letters.slice(0, match.index).trim();
    if (word === 'ac') current = 'AC';
    else if (word === 'dc') current = 'DC';
    else if (!word.startsWith('r')) peak = true;
  }
  letters = letters.replaceAll(' ', '');
  return current === undefined ? { letters, peak } : { letters, current, peak };
}

function readLetters(letters: string, unit: Unit, written: string): UnitReading | RefusedQuantity {
  const own = readUnit(letters, unit) ?? readBarePrefix(letters, unit);
  if (own !== undefined) return own;
  if (/^(?:-|to|\/|x|×)?\d/i.test(letters)) return refuse('not-a-number', `“${written}” looks like two numbers; give one`);
  const other = (Object.keys(UNITS) as Unit[]).find((candidate) => readUnit(letters, candidate) !== undefined);
  const wanted = `${UNITS[unit].names}, for example ${UNITS[unit].example}`;
  return refuse(
    'wrong-unit',
    other === undefined
      ? `The unit “${letters}” in “${written}” is not known here: give ${wanted}`
      : `“${written}” is in ${UNITS[other].names}; this asks for ${wanted}`,
  );
}

function bareScale({ unit, assume }: ParseOptions): Reading['scale'] {
  if (assume === undefined) return { exponent: unit === '%' ? -2 : 0, factor: 1, offset: 0 };
  const reading = readUnit(plainText(assume).replaceAll(' ', ''), unit);
  if (reading === undefined || 'unclear' in reading) {
    throw new InputError('assume', assume, { expected: `a unit of ${UNITS[unit].names}` });
  }
  return reading;
}

/** Units whose letter may itself stand for the decimal mark: `4R7`, `5V1`. */
const UNIT_MARKS: Partial<Record<Unit, string>> = { Ω: 'rR', V: 'V', A: 'A', F: 'F', H: 'H', W: 'W' };

/** IEC 60062: `4k7`, `0R47`, `2m2 F`, where a letter takes the place of the decimal mark. */
function readCode(parts: { digits: string; mark: string; fraction: string; letters: string }, unit: Unit, written: string): Reading | RefusedQuantity {
  const { digits, mark, fraction, letters } = parts;
  const scale = UNIT_MARKS[unit]?.includes(mark) === true ? { exponent: 0, factor: 1, offset: 0 } : readBarePrefix(mark, unit);
  if (scale === undefined || !/^\d*$/.test(digits)) return notANumber(written, unit);
  if ('unclear' in scale) return refuse('ambiguous', `“${written}”: ${scale.unclear}`);
  if (letters !== '') {
    const named = readLetters(letters, unit, written);
    if ('ok' in named) return named;
    if ('unclear' in named || named.exponent !== 0 || named.factor !== 1) {
      return refuse('not-a-number', `“${written}” gives its size twice: write it once, for example ${UNITS[unit].example}`);
    }
  }
  return { decimal: `${digits === '' ? '0' : digits}.${fraction}`, scale };
}

/** Units of which thousands are everyday figures, so that `4,700` of them needs no asking. */
const THOUSANDS_USUAL: readonly Unit[] = ['Ω', 'Hz', ''];

function readPlain(parts: { digits: string; letters: string }, options: ParseOptions, written: string): Reading | RefusedQuantity {
  const { unit, assume = unit } = options;
  const numeral = readFraction(parts.digits) ?? readDigits(parts.digits);
  if ('unclear' in numeral) return refuse('not-a-number', `${numeral.unclear}: give ${UNITS[unit].names}, for example ${UNITS[unit].example}`);
  const bare = parts.letters === '';
  const scale = bare ? bareScale(options) : readLetters(parts.letters, unit, written);
  if ('ok' in scale) return scale;
  if ('unclear' in scale) return refuse('ambiguous', `“${written}”: ${scale.unclear}`);
  if (numeral.ambiguous !== undefined) {
    const usual =
      scale.factor === 3600 ||
      (scale.factor === 1 && unit !== '%' && (scale.exponent < 0 || (scale.exponent === 0 && THOUSANDS_USUAL.includes(unit))));
    const { thousands, fraction } = numeral.ambiguous;
    if (!usual) return refuse('ambiguous', `“${written}” can be ${thousands} or ${Number(fraction)}: write one of these`);
  }
  return { decimal: numeral.decimal, scale, ...(bare && assume !== '' ? { assumed: assume } : {}) };
}

function outOfRange(value: number, { unit, min, max, above }: ParseOptions): RefusedQuantity | undefined {
  const fits = (above === undefined || value > above) && (min === undefined || value >= min) && (max === undefined || value <= max);
  if (fits) return undefined;
  const show = (limit: number): string => formatQuantity({ value: limit, unit, digits: 4 });
  const allowed = [
    ...(above === undefined ? [] : [`more than ${show(above)}`]),
    ...(min === undefined ? [] : [`at least ${show(min)}`]),
    ...(max === undefined ? [] : [`at most ${show(max)}`]),
  ];
  return refuse('out-of-range', `${show(value)} is out of range: give ${allowed.join(' and ')}`);
}

/**
 * Reads a value as technicians write it: `4k7`, `0R47`, `2200u`, `4,700 µF`, `1.5 k`, `.5A`, `6.3 V AC`, `5V1`, `1/4 W`.
 *
 * Gives the SI value, or a reason for the reader; never throws on any text. Letter codes follow IEC 60062 (a prefix
 * or R in place of the decimal mark). A bare number takes the unit in `assume`. A single dot is the decimal point;
 * how commas are told apart is described at `readDigits`. `1,500` of a unit that is usually small (volts, amps,
 * watts, farads and anything in kilo or mega) can be 1500 or 1.5 and is refused; of ohms, hertz, hours and of milli,
 * micro, nano and pico it is thousands. Case is taken as written where it tells m from M, and forgiven elsewhere;
 * `MA`, `mf` and an unaccompanied `m` for ohms are refused.
 * Throws `InputError` only when `assume` itself is not a unit of the field.
 */
export function parseQuantity(options: ParseOptions): ParsedQuantity | RefusedQuantity {
  const { unit, expects } = options;
  bareScale(options);
  const written = plainText(options.text);
  if (written === '') return refuse('empty', `Nothing is written: give ${UNITS[unit].names}, for example ${UNITS[unit].example}`);
  if (written.length > 60) return notANumber(`${written.slice(0, 20)}…`, unit);

  const parts = /^([+-]?) ?(?:(\d[\d .,'/]*|[.,]\d+)(?:([eE][+-]?\d+)(?![\d.,]))?|(?=[rRµuUnNpPkKmMG]\d))(.*)$/s.exec(written);
  if (parts === null) return notANumber(written, unit);
  const [, sign = '', digits = '', power = '', tail = ''] = parts;
  if (unit === 'Ω' && /^\d+$/.test(digits) && /^E\d+$/.test(power)) {
    const tenths = power.slice(1);
    return refuse('ambiguous', `“${written}” can be ${digits}.${tenths} Ω in letter code or ${digits} × 10^${tenths} Ω: write ${digits}R${tenths} for the first`);
  }

  const ownUnit = readUnit(tail.replaceAll(' ', ''), unit) !== undefined;
  const code = ownUnit || digits.endsWith(' ') || power !== '' ? null : /^([A-Za-zµ])(\d+)(.*)$/s.exec(tail);
  const words = splitWords(code === null ? tail : (code[3] ?? ''));
  if (words.peak) return refuse('wrong-unit', `“${written}” is marked as a peak: give the figure this asks for, without the mark`);
  if (words.current !== undefined && expects !== undefined && words.current !== expects) {
    return refuse('wrong-unit', `“${written}” is marked ${words.current}; this asks for ${expects}`);
  }
  const { letters } = words;
  const reading =
    code === null
      ? readPlain({ digits: digits.trim(), letters }, options, written)
      : readCode({ digits, mark: code[1] ?? '', fraction: code[2] ?? '', letters }, unit, written);
  if ('ok' in reading) return reading;

  // Joined as text so that 4700 µF is the double nearest 0.0047, not a product rounded twice.
  const { scale } = reading;
  const number = Number(`${sign}${reading.decimal}e${scale.exponent + Number(power.slice(1))}`);
  const value = (number + scale.offset) * scale.factor;
  if (!Number.isFinite(value)) return refuse('out-of-range', `“${written}” is beyond any value that can be reckoned with`);
  return (
    outOfRange(value, options) ?? {
      ok: true,
      value: value === 0 ? 0 : value,
      ...(reading.assumed === undefined ? {} : { assumed: reading.assumed }),
      ...(words.current === undefined ? {} : { current: words.current }),
    }
  );
}
