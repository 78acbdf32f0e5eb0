/** The shop's jobs as one value: what lessons compute their figures from. */
import jobs from '../../content/shop/lesson-jobs.json';

export const shop = jobs;
export type Shop = typeof jobs;
