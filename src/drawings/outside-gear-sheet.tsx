import type { VNode } from 'preact';
import { Sheet } from './sheet.tsx';
import { Led, Node, ProtectiveEarth, RelayCoil, Resistor, Switch, Winding } from './symbols.tsx';

export type JackFeed = 'coil' | 'logic' | 'led' | 'rail-positive' | 'none';

export interface OutsideGearSheetProps {
  readonly id: string;
  readonly desc: string;
  readonly tip: JackFeed;
  readonly ring: JackFeed;
  readonly sleeve: 'rail-negative' | 'rail-positive' | 'chassis' | 'isolated';
  readonly isOnPanel: boolean;
  readonly hasEntryResistor: boolean;
  readonly railGround: 'bonded' | 'resistor' | 'floating';
  /** The winding behind the rectifier has a ground of its own. */
  readonly isWindingGrounded: boolean;
  readonly isEarthed: boolean;
  readonly gear: 'none' | 'footswitch' | 'sleeve-to-earth' | 'isolated-contact' | 'optocoupler';
  /** What flows round by the outside earth: a second ground's, or only that of two earths that differ. */
  readonly loop?: { readonly text: string; readonly isFault: boolean };
  readonly texts: {
    readonly rail: string;
    /** Above the chassis, plug in and switch open. */
    readonly tip?: string;
    readonly ring?: string;
    readonly sleeve?: string;
    readonly cable: string;
    readonly earth: string;
    /** What drives the optocoupler. */
    readonly drive: string;
  };
}

const TIP = 78;
const RING = 122;
const SLEEVE = 174;
const JACK = 236;
const PLUS = 44;
const MINUS = 226;
const CHASSIS = 272;
const BUILDING = 318;
const BOX = 336;

function Feed({ kind, y, hasEntry, isOnJack }: { readonly kind: JackFeed; readonly y: number; readonly hasEntry: boolean; readonly isOnJack: boolean }): VNode | null {
  if (kind === 'none' || !isOnJack) return null;
  const at = [104, y] as const;
  return (
    <>
      <path class="wire" d={`M52 ${PLUS}V${y}H${kind === 'rail-positive' ? 156 : 78}${kind === 'rail-positive' ? '' : `M130 ${y}H156`}${hasEntry ? `M208 ${y}H${JACK - 4}` : `M156 ${y}H${JACK - 4}`}`} />
      {kind === 'coil' && <RelayCoil at={at} turn={90} />}
      {kind === 'logic' && <Resistor at={at} turn={90} />}
      {kind === 'led' && <Led at={at} turn={90} />}
      {hasEntry && <Resistor at={[182, y]} turn={90} />}
    </>
  );
}

/** Where the sleeve's wire goes inside the amp. */
function sleeveWire(sleeve: OutsideGearSheetProps['sleeve']): string {
  switch (sleeve) {
    case 'rail-negative':
      return `M${JACK - 4} ${SLEEVE}H150V${MINUS}`;
    case 'rail-positive':
      return `M${JACK - 4} ${SLEEVE}H52V${PLUS}`;
    case 'chassis':
      return `M${JACK - 4} ${SLEEVE}H204V${CHASSIS}`;
    default:
      return `M${JACK - 4} ${SLEEVE}H204`;
  }
}

function Rail({ railGround, text }: { readonly railGround: OutsideGearSheetProps['railGround']; readonly text: string }): VNode {
  return (
    <>
      <path class="wire" d={`M30 ${PLUS}H60M30 ${MINUS}H160`} />
      <text class="label-volts" x="66" y={PLUS + 5}>
        {text}
      </text>
      <text class="label" x="120" y={MINUS + 17}>
        negative
      </text>
      {railGround === 'floating' ? (
        <>
          <path class="wire" d={`M110 ${MINUS}V${MINUS + 12}M110 ${CHASSIS - 12}V${CHASSIS}`} />
          <circle class="terminal" cx="110" cy={MINUS + 14} r="3" />
          <circle class="terminal" cx="110" cy={CHASSIS - 14} r="3" />
        </>
      ) : (
        <path class="wire" d={`M110 ${MINUS}V${CHASSIS}`} />
      )}
      {railGround === 'resistor' && <path class="part block" d={`M104 ${MINUS + 9}h12v28h-12Z`} />}
      <Node at={[110, MINUS]} />
    </>
  );
}

/** The light side of an optocoupler between tip and sleeve; its transistor side on the rail, with nothing between the two. */
function Optocoupler(): VNode {
  return (
    <>
      <path class="wire" d={`M${JACK - 4} ${TIP}H182V96M182 148V${SLEEVE}H${JACK - 4}M52 ${PLUS}V106M52 146V${MINUS}`} />
      <Led at={[182, TIP + 44]} turn={180} />
      <path class="part block" d="M26 106h52v40h-52Z" />
      <text class="label" x="52" y="130" text-anchor="middle">
        output
      </text>
      <path class="volts-needed" d="M112 62V200" />
      <text class="label" x="112" y="214" text-anchor="middle">
        light alone
      </text>
    </>
  );
}

function Box({ gear, hasRing, texts }: Pick<OutsideGearSheetProps, 'gear' | 'texts'> & { readonly hasRing: boolean }): VNode | null {
  if (gear === 'none') return null;
  const name = { footswitch: 'footswitch', 'sleeve-to-earth': 'earthed box', 'isolated-contact': 'dry contact', optocoupler: 'box' }[gear];
  return (
    <>
      <path class="part" d={`M${BOX} 46h136v152h-136Z`} />
      <text class="label-part" x={BOX + 8} y="64">
        {name}
      </text>
      <path class="wire" d={`M${JACK + 4} ${TIP}H370V100M370 152V${SLEEVE}M${JACK + 4} ${SLEEVE}H${gear === 'sleeve-to-earth' ? 446 : hasRing ? 420 : 370}${hasRing ? `M${JACK + 4} ${RING}H362M378 ${RING}H420` : ''}`} />
      {gear === 'optocoupler' ? (
        <>
          <path class="wire" d="M370 100V120M370 132V152" />
          <path class="part" d="M358 120h24M363 132h14" />
          <text class="label-volts" x="386" y="131">
            {texts.drive}
          </text>
        </>
      ) : (
        <Switch at={[370, 126]} />
      )}
      {hasRing && gear !== 'optocoupler' && (
        <>
          <path class="wire" d={`M362 ${RING}a8 8 0 0 1 16 0`} />
          <Switch at={[420, 148]} />
        </>
      )}
      <text class="label" x="286" y={SLEEVE + 40} text-anchor="middle">
        {texts.cable}
      </text>
    </>
  );
}

/** A jack of the amp with what is on its contacts, what is plugged in, and the way round by the two earths. */
export function OutsideGearSheet(props: OutsideGearSheetProps): VNode {
  const { id, desc, tip, ring, sleeve, isOnPanel, hasEntryResistor, railGround, isEarthed, gear, loop, texts } = props;
  const isOpto = gear === 'optocoupler';
  const hasRing = ring !== 'none' && !isOpto;
  const joinsEarth = gear === 'sleeve-to-earth';
  const viaChassis = isOnPanel ? JACK : sleeve === 'chassis' ? 204 : undefined;
  // A second ground that is the winding's takes the current by way of the rectifier; else it is the rail's bond.
  const bond = loop?.isFault === true && props.isWindingGrounded ? 30 : 110;
  const inside = viaChassis === undefined ? `H150V${MINUS}H${bond}V${CHASSIS}H60` : `H${viaChassis}V${CHASSIS}H60`;
  const way = `M60 ${CHASSIS}V${BUILDING}H446V${SLEEVE}${inside}`;
  const contacts = [
    { name: 'tip', y: TIP, volts: texts.tip }, ...(hasRing ? [{ name: 'ring', y: RING, volts: texts.ring }] : []), { name: 'sleeve', y: SLEEVE, volts: texts.sleeve },
  ];
  return (
    <Sheet id={id} title="The jack and what is plugged in" desc={desc} width={484} height={346}>
      <path class="part" d={`M10 20H${JACK}V${CHASSIS}`} />
      <path class="chassis" d={`M10 ${CHASSIS}H${JACK}`} />
      <text class="label-part" x="18" y="14">
        amp
      </text>
      {loop !== undefined && joinsEarth && <path class={loop.isFault ? 'fault' : 'path'} d={way} />}
      <Rail railGround={railGround} text={texts.rail} />
      {props.isWindingGrounded && (
        <>
          <Winding at={[30, (MINUS + CHASSIS) / 2]} />
          <text class="label" x="30" y={CHASSIS + 20} text-anchor="middle">
            winding
          </text>
        </>
      )}
      {isOpto ? (
        <Optocoupler />
      ) : (
        <>
          <Feed kind={tip} y={TIP} hasEntry={hasEntryResistor} isOnJack />
          <Feed kind={ring} y={RING} hasEntry={hasEntryResistor} isOnJack />
          <path class="wire" d={sleeveWire(sleeve)} />
        </>
      )}
      {isOnPanel && !isOpto && <path class="part" d={`M${JACK} ${SLEEVE}V${CHASSIS}`} />}
      <Box gear={gear} hasRing={hasRing} texts={texts} />
      {joinsEarth && (
        <>
          <path class="wire" d={`M446 ${SLEEVE}V${BUILDING}H266M214 ${BUILDING}H60V${CHASSIS}`} />
          <Resistor at={[240, BUILDING]} turn={90} />
          <text class="label" x="240" y={BUILDING + 24} text-anchor="middle">
            {`the building’s earth, ${texts.earth}`}
          </text>
          <Node at={[446, SLEEVE]} />
        </>
      )}
      {isEarthed && !joinsEarth && <ProtectiveEarth at={[60, CHASSIS + 5]} />}
      {!isEarthed && (
        <text class="label" x="70" y={CHASSIS + 20}>
          no earth
        </text>
      )}
      {contacts.map(({ name, y, volts }) => (
        <g key={name}>
          <circle class="terminal" cx={JACK} cy={y} r="4.5" />
          <text class="label" x={JACK + 9} y={y - 8}>
            {name}
          </text>
          {volts !== undefined && (
            <text class="label-volts" x={JACK + 9} y={y + 17}>
              {volts}
            </text>
          )}
        </g>
      ))}
      {loop !== undefined && joinsEarth && (
        <text class={loop.isFault ? 'label-fault' : 'label-amps'} x="352" y={BUILDING - 10} text-anchor="middle">
          {loop.text}
        </text>
      )}
    </Sheet>
  );
}
