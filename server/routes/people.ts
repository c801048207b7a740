import {
  changeColleague,
  findColleague,
  inviteAgain,
  invitePerson,
  listColleagues,
  removeColleague,
  signOutColleague,
} from '../access/people/people.ts';
import { DEALER, personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import { inTransaction } from '../database/inTransaction.ts';
import { createOnce } from '../requests/createOnce.ts';
import { Colleague, Invited, PersonBody, PersonPatch } from '../schemas/access.ts';
import { ByIdParams, NO_CONTENT, PageQuery, pageOf } from '../schemas/common.ts';

const tags = ['people'];

/** The people of the account, for its dealers. */
export async function peopleRoutes(app: App): Promise<void> {
  app.post(
    '/api/v1/people',
    {
      schema: {
        tags,
        summary: 'Invite a colleague; the invitation is answered this once',
        body: PersonBody,
        response: { 201: Invited },
      },
      config: { change: DEALER, byHand: true },
    },
    async (request, reply) => {
      const { accountId } = personOf(request);
      const invited = await createOnce(reply, (trx) => invitePerson(trx, accountId, request.body));
      return reply.header('location', `/api/v1/people/${invited.person.id}`).send(invited);
    },
  );

  app.get(
    '/api/v1/people',
    {
      schema: {
        tags,
        summary: 'List the people of the account',
        querystring: PageQuery,
        response: { 200: pageOf(Colleague) },
      },
      config: { see: DEALER, byHand: true, problems: ['not-found'] },
    },
    (request) => listColleagues(request.db, personOf(request).accountId, request.query),
  );

  app.get(
    '/api/v1/people/:id',
    {
      schema: { tags, summary: 'Read a person', params: ByIdParams, response: { 200: Colleague } },
      config: { see: DEALER, byHand: true },
    },
    (request) => findColleague(request.db, personOf(request).accountId, request.params.id),
  );

  app.patch(
    '/api/v1/people/:id',
    {
      schema: {
        tags,
        summary: 'Change the name or the role of a person',
        params: ByIdParams,
        body: PersonPatch,
        response: { 200: Colleague },
      },
      config: { see: DEALER, byHand: true },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) =>
        changeColleague(trx, accountId, request.params.id, request.body),
      );
    },
  );

  app.delete(
    '/api/v1/people/:id',
    {
      schema: {
        tags,
        summary: 'Remove a person; it is signed out at once',
        params: ByIdParams,
        response: { 204: NO_CONTENT },
      },
      config: { see: DEALER, byHand: true },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => removeColleague(trx, accountId, request.params.id));
    },
  );

  app.delete(
    '/api/v1/people/:id/sessions',
    {
      schema: {
        tags,
        summary: 'Sign a person out everywhere, as after the loss of a phone',
        params: ByIdParams,
        response: { 204: NO_CONTENT },
      },
      config: { see: DEALER, byHand: true },
    },
    (request) => {
      const { accountId } = personOf(request);
      return inTransaction(request.db, (trx) => signOutColleague(trx, accountId, request.params.id));
    },
  );

  app.post(
    '/api/v1/people/:id/invitation',
    {
      schema: {
        tags,
        summary: 'Invite a person again who has not joined yet; the earlier invitation ends',
        params: ByIdParams,
        response: { 201: Invited },
      },
      config: { see: DEALER, byHand: true },
    },
    (request, reply) => {
      const { accountId } = personOf(request);
      return createOnce(reply, (trx) => inviteAgain(trx, accountId, request.params.id));
    },
  );
}
