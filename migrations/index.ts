import type { Migration } from 'kysely';
import * as firstTables from './0001-first-tables.ts';
import * as grantsAndInvitations from './0002-grants-and-invitations.ts';
import * as rowLevelSecurity from './0003-row-level-security.ts';
import * as placingAndRetention from './0004-placing-and-retention.ts';
import * as liveStrokes from './0005-live-strokes.ts';
import * as lentNormals from './0006-lent-normals.ts';
import * as tokensAndResets from './0007-tokens-and-resets.ts';
import * as settingsAndVerdicts from './0009-settings-and-verdicts.ts';
import * as recordAndDeletedCoaches from './0012-record-and-deleted-coaches.ts';
import * as notices from './0014-notices.ts';
import * as packedCheckpoints from './0016-packed-checkpoints.ts';
import * as measuredBeforeStored from './0017-measured-before-stored.ts';
import * as verdictColumn from './0018-verdict-column.ts';
import * as resultsApart from './0019-results-apart.ts';
import * as concernOfCoaches from './0020-concern-of-coaches.ts';
import * as ratesOfStrokes from './0021-rates-of-strokes.ts';
import * as removedStrokes from './0022-removed-strokes.ts';
import * as removedStrokesOutliveRooms from './0023-removed-strokes-outlive-rooms.ts';
import * as formerWarnings from './0024-former-warnings.ts';
import * as slimmerMeasures from './0025-slimmer-measures.ts';

/** Every migration by name, in order; some numbers were never used. Never edit one that was merged: add another. */
export const MIGRATIONS: Readonly<Record<string, Migration>> = {
  '0001-first-tables': firstTables,
  '0002-grants-and-invitations': grantsAndInvitations,
  '0003-row-level-security': rowLevelSecurity,
  '0004-placing-and-retention': placingAndRetention,
  '0005-live-strokes': liveStrokes,
  '0006-lent-normals': lentNormals,
  '0007-tokens-and-resets': tokensAndResets,
  '0009-settings-and-verdicts': settingsAndVerdicts,
  '0012-record-and-deleted-coaches': recordAndDeletedCoaches,
  '0014-notices': notices,
  '0016-packed-checkpoints': packedCheckpoints,
  '0017-measured-before-stored': measuredBeforeStored,
  '0018-verdict-column': verdictColumn,
  '0019-results-apart': resultsApart,
  '0020-concern-of-coaches': concernOfCoaches,
  '0021-rates-of-strokes': ratesOfStrokes,
  '0022-removed-strokes': removedStrokes,
  '0023-removed-strokes-outlive-rooms': removedStrokesOutliveRooms,
  '0024-former-warnings': formerWarnings,
  '0025-slimmer-measures': slimmerMeasures,
};
