import { lastLook, noteLook } from '../access/own/looks.ts';
import { changeSettings, readSettings } from '../access/own/settings.ts';
import { personOf } from '../access/scopes/caller.ts';
import type { App } from '../appTypes.ts';
import {
  changeNoticeSettings,
  type KeptNoticeSettings,
  readNoticeSettings,
  resumeMail,
} from '../notices/noticeSettings.ts';
import { Look, NoticeSettings, NoticeSettingsPatch, Settings, SettingsPatch } from '../schemas/settings.ts';

const tags = ['session'];

/** What the caller sets for itself, and what it has seen. */
export async function settingsRoutes(app: App): Promise<void> {
  const withMail = (kept: KeptNoticeSettings) => ({ ...kept, mails: app.mailer.reachesMailboxes });
  app.get(
    '/api/v1/settings',
    { schema: { tags, summary: 'How the caller wants things shown', response: { 200: Settings } } },
    (request) => readSettings(request.db, personOf(request)),
  );

  app.patch(
    '/api/v1/settings',
    {
      schema: {
        tags,
        summary: 'Change how things are shown to the caller',
        body: SettingsPatch,
        response: { 200: Settings },
      },
    },
    (request) => changeSettings(request.db, personOf(request), request.body),
  );

  app.get(
    '/api/v1/settings/notices',
    { schema: { tags, summary: 'What the caller is told by mail', response: { 200: NoticeSettings } } },
    async (request) => withMail(await readNoticeSettings(request.db, personOf(request))),
  );

  app.patch(
    '/api/v1/settings/notices',
    {
      schema: {
        tags,
        summary: 'Change what the caller is told by mail',
        body: NoticeSettingsPatch,
        response: { 200: NoticeSettings },
      },
    },
    async (request) => withMail(await changeNoticeSettings(request.db, personOf(request), request.body)),
  );

  app.post(
    '/api/v1/settings/notices/resumption',
    {
      schema: {
        tags,
        summary: 'Mail the caller again, after its mailbox was refused',
        response: { 200: NoticeSettings },
      },
    },
    async (request) => withMail(await resumeMail(request.db, personOf(request))),
  );

  app.get(
    '/api/v1/overview/look',
    {
      schema: {
        tags: ['results'],
        summary: 'When the caller last looked over the coaches on an earlier visit',
        response: { 200: Look },
      },
    },
    (request) => lastLook(request.db, personOf(request)),
  );

  app.post(
    '/api/v1/overview/look',
    {
      schema: {
        tags: ['results'],
        summary: 'The same, and note that the caller looks over them now',
        response: { 200: Look },
      },
    },
    (request) => noteLook(request.db, personOf(request)),
  );
}
