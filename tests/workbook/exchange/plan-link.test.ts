import { deflateRawSync } from 'node:zlib';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { checksumOf, fromBase64Url, toBase64Url } from '../../../src/workbook/exchange/bytes.ts';
import { holdsPlan, LINK_CHARACTERS, readPlanLink, writePlanLink } from '../../../src/workbook/exchange/plan-link.ts';
import { readSamplePlan, samplePlan } from '../sample-plan.ts';

const write = async (title: string, plan: unknown): Promise<string> => {
  const outcome = await writePlanLink({ title, plan });
  if (!outcome.ok) throw new Error(outcome.problem.message);
  return outcome.value;
};
const read = (fragment: string) => readPlanLink(fragment, readSamplePlan);

/** A link whose checksum is right, whatever it holds. */
const forge = (payload: string | Uint8Array): string => {
  const packed = new Uint8Array(deflateRawSync(payload));
  return `#plan=1.${checksumOf(packed)}.${toBase64Url(packed)}`;
};

afterEach(() => { vi.unstubAllGlobals(); });

describe('bytes in an address', () => {
  it('have the published check value of CRC-32', () => expect(checksumOf(new TextEncoder().encode('123456789'))).toBe('cbf43926'));

  it('come back from base64url, whatever they are', () => {
    const bytes = Uint8Array.from({ length: 256 }, (_, index) => index);
    for (let length = 0; length <= 256; length += 1) expect(fromBase64Url(toBase64Url(bytes.slice(0, length)))).toEqual(bytes.slice(0, length));
    expect(toBase64Url(bytes)).toMatch(/^[\w-]+$/);
    expect(fromBase64Url('a')).toBeUndefined();
    expect(fromBase64Url('a+b=')).toBeUndefined();
  });
});

describe('a link that holds a plan', () => {
  it('gives back the title and the plan', async () => {
    const title = 'Quillon 20 · 4k7 µF ✓ 電';
    const fragment = await write(title, samplePlan(117));
    expect(fragment).toMatch(/^#plan=1\.[\da-f]{8}\.[\w-]+$/);
    expect(await read(fragment)).toEqual({ ok: true, value: { title, plan: samplePlan(117) } });
    expect(await read(fragment.slice(1))).toMatchObject({ ok: true });
  });

  it('survives programs that escape it or add a line end', async () => {
    const fragment = await write('Quillon 20', samplePlan());
    expect(await read(`#${encodeURIComponent(fragment.slice(1))}`)).toMatchObject({ ok: true });
    expect(await read(`${fragment}\n`)).toMatchObject({ ok: true });
  });

  it('is told from other fragments', () => {
    expect(holdsPlan('#plan=1.x')).toBe(true);
    expect(holdsPlan('#planning')).toBe(false);
    expect(holdsPlan('')).toBe(false);
  });
});

describe('a link that cannot be read says why', () => {
  const kindOf = async (fragment: string): Promise<string> => {
    const outcome = await read(fragment);
    if (outcome.ok) throw new Error('it was accepted');
    expect(outcome.problem.message).toMatch(/^\w.*\.$/);
    return `${outcome.problem.kind} ${outcome.problem.place}`.trim();
  };

  it('when it was cut anywhere', async () => {
    const fragment = await write('Quillon 20', samplePlan());
    for (let length = 6; length < fragment.length; length += 1) expect(await kindOf(fragment.slice(0, length))).toMatch(/^damaged/);
  });

  it('when it holds no plan, or comes from a later version', async () => {
    expect(await kindOf('#section-3')).toBe('foreign');
    expect(await kindOf('#plan=2.00000000.AAAA')).toBe('newer version');
    expect(await kindOf('#plan=0.00000000.AAAA')).toBe('damaged version');
  });

  it('when a field is wrong, with the field', async () => {
    expect(await kindOf(forge(JSON.stringify({ title: 'x', plan: { ...samplePlan(), mainsVolts: 9e9 } })))).toBe('invalid plan.mainsVolts');
    expect(await kindOf(forge(JSON.stringify({ title: 7, plan: samplePlan() })))).toBe('invalid title');
    expect(await kindOf(forge('[]'))).toBe('invalid');
    expect(await kindOf(forge('null'))).toBe('invalid');
    expect(await kindOf(forge('{"title":"x"'))).toBe('not-json character 13');
    expect(await kindOf(forge('{"title":"x","plan":{"__proto__":{}}}'))).toBe('invalid plan.__proto__');
    expect(await kindOf(forge(new Uint8Array([0xff, 0xfe, 0xfd])))).toBe('damaged payload');
  });

  it('when it would unpack to far more than any plan, without unpacking it', async () => {
    const bomb = forge(new Uint8Array(20_000_000));
    expect(bomb.length).toBeLessThan(LINK_CHARACTERS);
    expect(await kindOf(bomb)).toBe('too-large payload');
    expect(await kindOf(`#plan=1.00000000.${'A'.repeat(LINK_CHARACTERS)}`)).toBe('too-large');
  });

  it('when the browser cannot unpack', async () => {
    const fragment = await write('Quillon 20', samplePlan());
    vi.stubGlobal('DecompressionStream', undefined);
    expect(await kindOf(fragment)).toBe('unsupported');
    expect(await writePlanLink({ title: 'x', plan: samplePlan() })).toMatchObject({ ok: false, problem: { kind: 'unsupported' } });
  });

  it('when a plan is too large to be written as one', async () => {
    const noise = Array.from({ length: 60_000 }, (_, index) => (index * 2_654_435_761) % 4_294_967_296).join();
    expect(await writePlanLink({ title: 'x', plan: noise.slice(0, 200_000) })).toMatchObject({ ok: false, problem: { kind: 'too-large' } });
    expect(await writePlanLink({ title: 'x', plan: noise })).toMatchObject({ ok: false, problem: { kind: 'too-large' } });
  });
});
