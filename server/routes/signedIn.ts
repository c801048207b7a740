import type { FastifyReply } from 'fastify';
import { setSessionCookie } from '../access/signIn/sessionCookie.ts';
import { beginSession } from '../access/signIn/sessions.ts';
import type { App } from '../appTypes.ts';
import type { Person } from '../schemas/session.ts';

/** Begins a session of the person in the browser or program that asked, and is what that is answered (`SignedIn`). */
export async function signedIn(app: App, reply: FastifyReply, person: Person) {
  const session = await beginSession(app.database, person);
  setSessionCookie(reply.request, reply, session);
  return { person, token: session.token };
}
