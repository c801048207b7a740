import { MEASURES } from '../../analysis/measures.ts';
import type { App } from '../appTypes.ts';
import { MeasuresAnswer } from '../schemas/results.ts';

export async function measureRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/measures',
    {
      schema: {
        tags: ['results'],
        summary: 'The measures that a trend takes',
        response: { 200: MeasuresAnswer },
      },
    },
    async () => MEASURES.map(({ name, unit, title }) => ({ name, unit, title })),
  );
}
