/** The shop's jobs as one value: what lessons compute their figures from. */
import jobs from '../../content/shop/lesson-jobs.json';
import type { LoadItem, RectifierTopology } from '../compute/index.ts';
import type { Mains } from '../compute/supplies/corners.ts';

interface ShopJob {
  readonly mains: Mains;
  /** Air inside the chassis, with the amp played hard. */
  readonly airCelsius: number;
  readonly railVolts: number;
  readonly loads: readonly LoadItem[];
  readonly reservoir: { readonly farads: number; readonly ratedVolts: number };
}

type BareWinding = { readonly openCircuitVolts: number; readonly ohms: number };

export interface Shop {
  /** Two relays and a lamp from a small transformer, added. */
  readonly quillon20: ShopJob & {
    readonly winding: { readonly ratedVolts: number; readonly voltAmps: number; readonly regulation: number };
    readonly heater: BareWinding;
    readonly topology: RectifierTopology;
    /** Row of the diode catalogue, and the type of it that is fitted. */
    readonly diode: string;
    readonly diodeType: string;
    /** Row of the regulator catalogue. */
    readonly regulator: string;
  };
  /** DC heaters and five relays from a spare winding. */
  readonly tarn45: ShopJob & { readonly spare: BareWinding };
}

export const shop = jobs as Shop;
