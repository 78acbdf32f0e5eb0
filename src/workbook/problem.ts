/** What kind of trouble a reader is told about. */
export type ProblemKind =
  /** Larger than what is accepted; nothing of it was read. */
  | 'too-large'
  /** Nested deeper than what is accepted. */
  | 'too-deep'
  /** Not JSON text at all. */
  | 'not-json'
  /** Readable, but not something this site wrote. */
  | 'foreign'
  /** Written by a later version of this site. */
  | 'newer'
  /** Begins rightly, but was cut, altered or written wrongly. */
  | 'damaged'
  /** A field holds what it must not hold. */
  | 'invalid'
  /** The browser does not let this page keep anything. */
  | 'denied'
  /** The device, or the share of it that this site may use, is full. */
  | 'full'
  /** The browser lacks something that this needs. */
  | 'unsupported'
  /** Storage failed in a way that has no name here; the message carries what it said. */
  | 'failed';

/** One thing that went wrong with something kept, read or passed on. A value, never thrown: the page shows it. */
export interface Problem {
  readonly kind: ProblemKind;
  /** Where it is: a field (`plans.2.plan.mains.nominalVolts`), a character of the text, or '' for the whole. */
  readonly place: string;
  /** A sentence for the reader. */
  readonly message: string;
  /** Further places with the same kind of trouble, where more than one was found. */
  readonly also?: readonly { readonly place: string; readonly message: string }[];
}

/** Either a value, or the reason there is none. */
export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

/** Longest message kept: a hostile value is quoted in part only. */
const MESSAGE_CHARACTERS = 400;

export const accepted = <T>(value: T): Outcome<T> => ({ ok: true, value });

/** A refusal with its kind, place and message; the message is cut to a readable length. */
export function refused(kind: ProblemKind, place: string, message: string): { readonly ok: false; readonly problem: Problem } {
  const short = message.length > MESSAGE_CHARACTERS ? `${message.slice(0, MESSAGE_CHARACTERS)}…` : message;
  return { ok: false, problem: { kind, place, message: short } };
}
