import type { WebhookNews } from '../schemas/webhook.ts';
import type { SilentNotice, WarningNotice } from './notice.ts';

/** What a webhook is sent, as the very text that is signed. */
export function newsBody(notice: WarningNotice | SilentNotice): string {
  const news: WebhookNews = {
    type: notice.event,
    timestamp: notice.at,
    data: notice.event === 'logger.silent' ? ofLogger(notice) : ofWarning(notice),
  };
  return JSON.stringify(news);
}

function ofWarning(notice: WarningNotice) {
  const { kind, severity, side, direction, headline, openedAt, clearedAt } = notice;
  return {
    coach: { id: notice.coachId, name: notice.coach },
    room: { id: notice.roomId, name: notice.room },
    warning: { id: notice.warningId, kind, severity, side, direction, headline, openedAt, clearedAt },
  };
}

function ofLogger({ coachId, coach, loggerId, logger, lastHeardAt }: SilentNotice) {
  return {
    coach: { id: coachId, name: coach },
    logger: { id: loggerId, name: logger, lastHeardAt },
  };
}
