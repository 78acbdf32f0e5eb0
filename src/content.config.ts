import { defineCollection } from 'astro:content';
import { file, glob } from 'astro/loaders';
import { ampSchema, calculatorSchema, glossarySchema, jobSchema, lessonSchema, sourceSchema } from './components/content-schemas.ts';
import { quizSchema } from './components/quiz-schema.ts';

/** A lesson's address carries no number: `05-the-load-list.mdx` is `the-load-list`. */
const slugOf = ({ entry }: { readonly entry: string }): string => entry.replace(/^\d+-/, '').replace(/\.\w+$/, '');

export const collections = {
  lessons: defineCollection({
    loader: glob({ base: './content/lessons', pattern: '*.mdx', generateId: slugOf }),
    schema: lessonSchema,
  }),
  quizzes: defineCollection({ loader: glob({ base: './content/quizzes', pattern: '*.json', generateId: slugOf }), schema: quizSchema }),
  glossary: defineCollection({ loader: file('./content/glossary.json'), schema: glossarySchema }),
  sources: defineCollection({ loader: file('./content/sources.json'), schema: sourceSchema }),
  amps: defineCollection({ loader: file('./content/shop/amps.json'), schema: ampSchema }),
  jobs: defineCollection({ loader: file('./content/shop/jobs.json'), schema: jobSchema }),
  calculators: defineCollection({
    loader: file('./content/calculators.json', {
      parser: (text) =>
        Object.fromEntries((JSON.parse(text) as { slug: string }[]).map(({ slug, ...rest }, order) => [slug, { order, ...rest }])),
    }),
    schema: calculatorSchema,
  }),
};
