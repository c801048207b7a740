import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { acknowledgeMany } from '../results/acknowledgeMany.ts';
import { acknowledgeWarning } from '../results/acknowledgeWarning.ts';
import { findWarning, listWarnings } from '../results/warnings.ts';
import { warningView } from '../results/warningView.ts';
import { ByIdParams, pageOf } from '../schemas/common.ts';
import {
  AcknowledgementBody,
  Acknowledgements,
  AcknowledgementsBody,
  Warning,
  WarningsQuery,
} from '../schemas/results.ts';
import { findRoom } from '../things/rooms.ts';

const tags = ['warnings'];

export async function warningRoutes(app: App): Promise<void> {
  app.get(
    '/api/v1/rooms/:id/warnings',
    {
      schema: {
        tags,
        summary: "A room's warnings, newest first",
        params: ByIdParams,
        querystring: WarningsQuery,
        response: { 200: pageOf(Warning) },
      },
    },
    async (request) => {
      const person = personOf(request);
      await findRoom(request.db, person.accountId, request.params.id);
      return listWarnings(request.db, person, request.params.id, request.query);
    },
  );

  app.get(
    '/api/v1/warnings',
    {
      schema: {
        tags,
        summary: 'All warnings that the caller may see, newest first',
        querystring: WarningsQuery,
        response: { 200: pageOf(Warning) },
      },
      config: { visits: true },
    },
    (request) => listWarnings(request.db, personOf(request), null, request.query),
  );

  app.get(
    '/api/v1/warnings/:id',
    { schema: { tags, summary: 'Read a warning', params: ByIdParams, response: { 200: Warning } } },
    async (request) =>
      warningView(await findWarning(request.db, personOf(request).accountId, request.params.id)),
  );

  app.post(
    '/api/v1/warnings/:id/acknowledgement',
    {
      schema: {
        tags,
        summary: 'Acknowledge a warning',
        params: ByIdParams,
        body: AcknowledgementBody.nullish(),
        response: { 200: Warning },
      },
    },
    (request) => acknowledgeWarning(request.db, personOf(request), request.params.id, request.body?.note),
  );

  app.post(
    '/api/v1/acknowledgements',
    {
      schema: {
        tags,
        summary: 'Acknowledge many warnings at once, with one note',
        body: AcknowledgementsBody,
        response: { 200: Acknowledgements },
      },
      config: { visits: true },
    },
    async (request) => ({
      acknowledged: await acknowledgeMany(request.db, personOf(request), request.body),
    }),
  );
}
