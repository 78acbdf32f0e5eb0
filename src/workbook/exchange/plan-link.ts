import { attempt, readObject, readText } from '../fields.ts';
import type { ReadPlan } from '../plans/plan-record.ts';
import { readPlanAt, TITLE_CHARACTERS } from '../plans/plan-record.ts';
import type { Outcome } from '../problem.ts';
import { accepted, refused } from '../problem.ts';
import { LINK_LIMITS, parseUntrusted } from '../untrusted-json.ts';
import { checksumOf, deflate, fromBase64Url, inflate, toBase64Url } from './bytes.ts';

/** A plan as a link carries it. */
export interface LinkedPlan<Plan> {
  readonly title: string;
  readonly plan: Plan;
}

/** Longest fragment written or read. Browsers take more; the programs that people paste links into often do not. */
export const LINK_CHARACTERS = 32_000;

const VERSION = 1;
const PREFIX = 'plan=';

const isSupported = (): boolean => typeof CompressionStream === 'function' && typeof DecompressionStream === 'function';
const UNSUPPORTED = refused('unsupported', '', 'This browser is too old to pack or unpack a plan in a link. Pass the plan on as a file instead.');

/**
 * The fragment of an address that holds the plan itself:
 *
 *     #plan=1.<checksum>.<payload>
 *
 * 1 is the version of this form; the payload is `{"title", "plan"}` as JSON in UTF-8, deflated, in base64url; the
 * checksum is the CRC-32 of the deflated bytes. Being a fragment, it is never sent to a server.
 */
export async function writePlanLink<Plan>(linked: LinkedPlan<Plan>): Promise<Outcome<string>> {
  if (!isSupported()) return UNSUPPORTED;
  const { title, plan } = linked;
  const text = new TextEncoder().encode(JSON.stringify({ title, plan }));
  if (text.length > LINK_LIMITS.characters) return refused('too-large', '', 'This plan is too large for a link. Pass it on as a file instead.');
  const packed = await deflate(text);
  const fragment = `#${PREFIX}${VERSION}.${checksumOf(packed)}.${toBase64Url(packed)}`;
  if (fragment.length > LINK_CHARACTERS) return refused('too-large', '', 'This plan is too large for a link. Pass it on as a file instead.');
  return accepted(fragment);
}

/** True for a fragment that means to carry a plan, whether or not it can be read. */
export const holdsPlan = (fragment: string): boolean => /^#?plan(?:=|%3D)/i.test(fragment);

/** Some programs escape the characters of a link they pass on. */
function unescaped(fragment: string): string {
  if (!fragment.includes('%')) return fragment;
  try {
    return decodeURIComponent(fragment);
  } catch {
    return fragment;
  }
}

const CUT = 'The link was cut or changed on its way: a plan link must arrive whole. Ask for it again, or for the plan as a file.';

async function unpack(payload: string, checksum: string): Promise<Outcome<string>> {
  const packed = fromBase64Url(payload);
  if (packed === undefined || packed.length === 0) return refused('damaged', 'payload', CUT);
  if (checksumOf(packed) !== checksum) return refused('damaged', 'checksum', CUT);
  try {
    const bytes = await inflate(packed, LINK_LIMITS.characters);
    if (bytes === undefined) return refused('too-large', 'payload', `This link unpacks to more than ${LINK_LIMITS.characters / 1000} kB, which no plan is; it was not read.`);
    return accepted(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
  } catch {
    return refused('damaged', 'payload', CUT);
  }
}

/** Reads such a fragment, with or without its `#`, and validates the plan in it field by field. Never rejects. */
export async function readPlanLink<Plan>(fragment: string, readPlan: ReadPlan<Plan>): Promise<Outcome<LinkedPlan<Plan>>> {
  if (fragment.length > LINK_CHARACTERS) return refused('too-large', '', `This link is longer than ${LINK_CHARACTERS} characters, which no plan link is; it was not read.`);
  if (!holdsPlan(fragment)) return refused('foreign', '', 'This link holds no plan.');
  if (!isSupported()) return UNSUPPORTED;
  const parts = /^#?plan=(\d{1,4})\.([\da-f]{8})\.(.*)$/i.exec(unescaped(fragment.trim()));
  const [, version = '', checksum = '', payload = ''] = parts ?? [];
  if (parts === null) return refused('damaged', '', CUT);
  if (Number(version) > VERSION) return refused('newer', 'version', 'This link was made by a later version of the site. Reload the page to get the later version, then open the link again.');
  if (Number(version) !== VERSION) return refused('damaged', 'version', CUT);
  const text = await unpack(payload, checksum.toLowerCase());
  if (!text.ok) return text;
  const parsed = parseUntrusted(text.value, LINK_LIMITS);
  if (!parsed.ok) return parsed;
  const fields = attempt({
    at: '',
    kind: 'invalid',
    read: () => {
      const object = readObject('', parsed.value);
      return { title: readText('title', object['title'], { max: TITLE_CHARACTERS }), plan: object['plan'] };
    },
  });
  if (!fields.ok) return fields;
  const read = readPlanAt({ place: 'plan', value: fields.value.plan, readPlan, kind: 'invalid' });
  return read.ok ? accepted({ title: fields.value.title, plan: read.value.plan }) : read;
}
