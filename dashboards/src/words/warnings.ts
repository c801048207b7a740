import type { WarningKind } from '../api/types.ts';

/** Warnings and their evidence. */
export const warningsWords = {
  warnings: {
    title: 'Open warnings',
    none: 'No open warning.',
    noneUnseen: 'All of them have been seen.',
    acknowledged: 'Seen and still there',
    earlier: 'Earlier warnings',
    noEarlier: 'No earlier warning.',
    seen: 'What was measured',
    before: 'Before you touch anything',
    checks: 'What to check, in this order',
    never: 'What not to do, and what to remember',
    noForce: 'Do not force it. Let go of the switch when the room strains or stops.',
    stopTitle: 'When to stop using the room',
    stopWhen: {
      watch:
        'It can wait. Stop at once if the room jerks, leans, grinds or stops by itself, or if this turns into “Needs work”.',
      service:
        'Use it as little as you can, and have it looked at before the next trip. Stop at once if it jerks, leans, grinds or stops by itself.',
      stop: 'Now. Leave the room where it is. Do not try it again until somebody has found the cause.',
    },
    sureTitle: 'How sure this is',
    sure: {
      strokes: (seen: number, looked: number) => `It was seen in ${seen} of the last ${looked} strokes.`,
      very: (times: string) =>
        `Very sure. It is ${times} times as far from normal as strokes differ from each other.`,
      quite: (times: string) =>
        `Quite sure. It is ${times} times as far from normal as strokes differ from each other.`,
      stoodStill:
        'One try is enough to say it. The motor drew what it draws standing still, from start to end.',
      oneStroke: 'One stroke shows it. It began at one end and stood still far from the other.',
      severalStrokes: 'Several strokes in a row agree.',
      // Of the other kinds the strokes tell how sure it is.
      byKind: {
        'heavy-room': 'It was measured directly. No normal is needed to say it.',
        'weak-supply': 'It was measured directly, in two strokes or more.',
        'sensor-doubt': 'The record shows it. What the room itself does is not known until that is fixed.',
      } as Partial<Record<WarningKind, string>>,
    },
    likelyTitle: 'What it likely is',
    likely: {
      'rising-draw':
        'The room moves harder than it did. Dirt, a dry or worn slide, or a seal that drags is the usual cause.',
      'uneven-sides':
        'One side does part of the work of the other. A worn block or gear, or sides that are out of step, is the usual cause.',
      'stall-spike': 'Something catches for a moment.',
      'dropped-load':
        'One side turns but does not push. A gear that slips, a broken block or a loose shaft is the usual cause.',
      'late-side':
        'The sides are out of step. Wear on the late side, or timing that slipped, is the usual cause.',
      'heavy-room':
        'The room is too heavy for its motors as it stands. Often the racks carry weight that the rollers should carry.',
      'short-travel':
        'Something stops the room early. It may be a thing in its way, a lock for travel that still holds, a seal, or an end stop that was changed.',
      'weak-supply': 'The motors get too little voltage. A low battery or a poor contact is the usual cause.',
      'draw-rebound': 'The last work helped, but not for long. The cause behind it is likely still there.',
      'sensor-doubt':
        'The clamp, its zero or the logger is likely at fault, not the room. Its numbers cannot be trusted for now.',
    },
    likelyOfPattern: {
      'same-place':
        'Something catches at one place, every time. It is often a screw that stands out, or a dent in the rack.',
      'once-per-turn':
        'Something catches once in every turn of the gear. It is often a worn or broken tooth.',
      scattered:
        'Something catches, each time at another place. It is often a gear that does not sit firmly in its rack.',
    },
    likelyMisdated:
      'The clock of the logger is likely off, or somebody entered a wrong date. How much the room drew can be trusted; when it did, and where on its way, cannot.',
    picture: {
      course: (n: number, doing: string, outside: number) =>
        `${n} strokes ${doing}. ${outside === 0 ? 'None of them alone was' : outside === 1 ? '1 was' : `${outside} were`} outside the normal of its time.`,
      heavy: (side: string, n: number, doing: string, lowest: string, highest: string) =>
        `${side}: ${n} strokes ${doing}, ${lowest} to ${highest}.`,
      supply: (n: number, lowest: string, highest: string) =>
        `Supply while running, ${n} strokes: ${lowest} to ${highest}.`,
      below: (n: number, limit: string) =>
        `${n === 0 ? 'None was' : n === 1 ? '1 was' : `${n} were`} below the limit of ${limit}, the dashed line.`,
      span: (from: string, to: string) => `They are from ${from} to ${to}.`,
      band: 'The band is what is normal now.',
      began: 'The arrow points at the first of them since this warning began.',
      travel: (side: string, highest: string) =>
        `${side}: the latest stroke along the travel, from fully in to fully out. Highest ${highest}.`,
      travelAt: (side: string, highest: string, place: string) =>
        `${side}: the latest stroke along the travel, from fully in to fully out. Highest ${highest}; the arrow points at ${place}.`,
    },
    acknowledge: 'I have seen this',
    acknowledgeTitle: (headline: string) => `I have seen this: ${headline}`,
    note: 'Note (optional)',
    save: 'Mark as seen',
    saving: 'Saving…',
    cancel: 'Cancel',
    since: 'Since',
    first: 'First stroke',
    latest: 'Latest stroke',
    seenBy: (who: string | null, when: string) => `Seen ${who === null ? '' : `by ${who} `}on ${when}`,
    cleared: (when: string) => `Cleared on ${when}`,
    kinds: {
      'rising-draw': 'Drawing more than it used to',
      'uneven-sides': 'One side works harder',
      'stall-spike': 'Spikes in mid-travel',
      'dropped-load': 'One side runs without load',
      'late-side': 'One side is late',
      'heavy-room': 'Heavy from the start',
      'short-travel': 'Stops before its usual travel',
      'weak-supply': 'Supply too low while running',
      'draw-rebound': 'Climbing again after the work',
      'sensor-doubt': 'The record is in doubt',
    },
    patterns: {
      'same-place': 'always at the same place',
      'once-per-turn': 'once every turn of the gear',
      scattered: 'at changing places',
    },
    side: 'Side',
    place: 'Place',
    pattern: 'Pattern',
    direction: 'Which way',
  },

  evidence: {
    yes: 'yes',
    no: 'no',
    ofLoad: (part: string) => `${part} of the load`,
    /** In the order in which it is told; what has no name here is named by itself, after the rest. */
    names: {
      risePercent: 'Above its normal by',
      measuredAmps: 'Latest stroke',
      expectedAmps: 'Expected',
      runningAmps: 'Running current',
      limitAmps: 'Limit',
      timesLimit: 'Times the limit',
      modelAmps: 'Others of its model',
      timesModel: 'Times as much as those',
      stallAmps: 'Standing still',
      partOfStall: 'Part of that',
      heightPercent: 'Height of the spikes',
      shareNow: 'Share on the latest stroke',
      sharePoints: 'Share moved by',
      laterS: 'Later than usual by',
      lagS: 'Latest stroke, behind the other side',
      shortPercent: 'Shorter by',
      shortStrokes: 'Short strokes of the latest six',
      stalled: 'Stood still there',
      stoodStill: 'Did not move',
      from: 'From',
      to: 'To',
      moments: 'Times without load',
      leastVolts: 'Limit',
      fellPercent: 'Fell with the work by',
      climbedPercent: 'Climbed back by',
      percentPerStroke: 'Each stroke since',
      percentPerStrokeBefore: 'Each stroke before the work',
      restAmps: 'Reads at rest',
    },
  },
} as const;
