import { shop, type Shop } from '../../../src/components/shop.ts';
import type { Worked } from '../../../src/components/worked/worked.ts';

/** What a lesson's module computes from the shop's jobs. */
export async function workedOf(slug: string): Promise<Worked<string>> {
  const module = (await import(`../../../src/components/worked/${slug}.ts`)) as { work: (shop: Shop) => Worked<string> };
  return module.work(shop);
}

/** What it gives its quiz. */
export const quizFiguresOf = async (slug: string): Promise<Worked<string>['quiz']> => (await workedOf(slug)).quiz;
