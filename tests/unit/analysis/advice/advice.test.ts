import { describe, expect, test } from 'vitest';
import { CAUTIONS, cautionsFor } from '../../../../analysis/advice/cautions.ts';
import { cautionsOfCheck, checksAtRest, checksFor } from '../../../../analysis/advice/checks.ts';
import type { Doubt } from '../../../../analysis/measures.ts';
import { DRIVES, type Drive } from '../../../../analysis/trace.ts';
import {
  SPIKE_PATTERNS,
  type SpikePattern,
  WARNING_KINDS,
  type WarningKind,
} from '../../../../analysis/warning.ts';

const FRICTION_KINDS = ['rising-draw', 'draw-rebound', 'heavy-room'] as const;
const UNEVEN_KINDS = ['uneven-sides', 'dropped-load', 'late-side'] as const;
const PATTERNS: readonly (SpikePattern | null)[] = [null, ...SPIKE_PATTERNS];

/** Every answer there is: kind, drive, pattern. */
const ALL = WARNING_KINDS.flatMap((kind) =>
  DRIVES.flatMap((drive) =>
    (kind === 'stall-spike' ? SPIKE_PATTERNS : [null]).map((pattern) => ({
      kind,
      drive,
      pattern,
      checks: checksFor(kind, drive, pattern),
      cautions: cautionsFor(kind),
    })),
  ),
);

const textOf = (kind: WarningKind, drive: Drive, pattern: SpikePattern | null = null) =>
  checksFor(kind, drive, pattern).join('\n');

/** Facts of the trade. Source of every row: common practice, no source. */
const FACTS: readonly {
  readonly fact: string;
  readonly kinds: readonly WarningKind[];
  readonly drive: Drive;
  readonly pattern?: SpikePattern;
  readonly says: readonly RegExp[];
}[] = [
  {
    fact: 'shoes of plastic slide in aluminium: clean, then a dry PTFE film, on which opinions differ',
    kinds: FRICTION_KINDS,
    drive: 'in-wall',
    says: [/clean/i, /plastic shoes?.*aluminium/i, /dry PTFE/i, /opinions differ/i, /the manual decides/i],
  },
  {
    fact: 'with the motors disengaged the room moves by hand',
    kinds: FRICTION_KINDS,
    drive: 'in-wall',
    says: [/disengaged/i, /by hand/i],
  },
  {
    fact: 'rollers carry the weight and racks only guide: a heavy draw means weight on the racks',
    kinds: ['heavy-room'],
    drive: 'in-wall',
    says: [/rollers carry/i, /racks only guide/i],
  },
  {
    fact: 'teeth of rams are kept clean and not lubricated; sticky and silicone products hold dirt and burn the motor',
    kinds: FRICTION_KINDS,
    drive: 'through-frame',
    says: [/clean the teeth/i, /do not lubricate/i, /sticky|silicone/i, /hold dirt/i, /motor/i],
  },
  {
    fact: 'squeal has two homes, and the bolt needs the weight off it first',
    kinds: FRICTION_KINDS,
    drive: 'through-frame',
    says: [
      /squeal/i,
      /roller at the inner end of the ram/i,
      /bolt through the gear pack/i,
      /weight off it first/i,
    ],
  },
  {
    fact: 'a gear of a ram has 15 or 18 teeth',
    kinds: UNEVEN_KINDS,
    drive: 'through-frame',
    says: [/15 or 18/],
  },
  {
    fact: 'fasteners of a rack back out, the lower rack first; there is little clearance for a head',
    kinds: ['stall-spike'],
    drive: 'in-wall',
    pattern: 'same-place',
    says: [/backed out/i, /lower rack first/i, /little clearance/i, /seat it/i],
  },
  {
    fact: 'the block follows its shaft and never pivots in its rack; replacing it is work for a licensed technician',
    kinds: UNEVEN_KINDS,
    drive: 'in-wall',
    says: [/follow its shaft/i, /never pivot/i, /broken teeth/i, /broken shoe/i, /licensed technician/i],
  },
  {
    fact: 'a gear with broken teeth meshes now and then: spikes once per turn',
    kinds: ['stall-spike'],
    drive: 'in-wall',
    pattern: 'once-per-turn',
    says: [/broken teeth/i, /never pivot/i],
  },
  {
    fact: 'a gear with broken teeth meshes now and then: scattered spikes',
    kinds: ['stall-spike'],
    drive: 'in-wall',
    pattern: 'scattered',
    says: [/broken teeth/i, /broken shoe/i],
  },
];

test.each(FACTS)('common practice, no source: $fact', ({ kinds, drive, pattern = null, says }) => {
  for (const kind of kinds) {
    for (const words of says) expect(textOf(kind, drive, pattern), kind).toMatch(words);
  }
});

test('nobody is told to lubricate the teeth of a room on rams', () => {
  for (const kind of WARNING_KINDS) {
    for (const pattern of PATTERNS) {
      for (const check of checksFor(kind, 'through-frame', pattern)) {
        if (/lubricat|grease|oil|PTFE|spray/i.test(check)) expect(check).toMatch(/do not lubricate/i);
      }
    }
  }
});

test('for every kind, drive and pattern there are checks and cautions, in whole sentences, none said twice', () => {
  for (const { kind, drive, checks, cautions } of ALL) {
    for (const sentence of [...checks, ...cautions]) expect(sentence).toMatch(/^[A-Z].{15,}[.:]$/s);
    expect(checks.length, `${kind} ${drive}`).toBeGreaterThan(0);
    for (const said of [checks, cautions]) expect(new Set(said).size, `${kind} ${drive}`).toBe(said.length);
  }
});

test("with every kind the maker's manual, local codes and a licensed technician are named", () => {
  for (const { kind, cautions } of ALL) {
    const text = cautions.join('\n');
    expect(text, kind).toMatch(/maker's manual and local codes come first/i);
    expect(text, kind).toMatch(/licensed technician/i);
  }
});

test('nothing is ever said to be safe', () => {
  for (const { checks, cautions } of ALL) {
    expect([...checks, ...cautions].join('\n')).not.toMatch(/\bsafe(ly|ty)?\b/i);
  }
});

const TOUCHES =
  /look|watch|listen|clean|disengage|seat|measure|run the room|count|check|set its zero|clamp|see whether/i;

/** The cautions that belong to what the checks ask a person to do. */
test.each(WARNING_KINDS)('%s: the cautions stand with what suggests looking, touching or running', (kind) => {
  for (const { checks, cautions, drive } of ALL.filter((row) => row.kind === kind)) {
    const asked = checks.join('\n');
    const said = cautions.join('\n');
    expect(asked, drive).toMatch(TOUCHES);
    if (/room|rack|ram|gear|block|stroke/i.test(asked)) expect(said, drive).toMatch(/out of the travel/i);
    if (/disengage|bolt|fastener|block|gear|\broller|seat it/i.test(asked)) {
      expect(said, drive).toMatch(/take the weight off before you loosen/i);
      expect(said, drive).toMatch(/secure the room for travel/i);
    }
    if (/motor|battery|terminal|clamp|wire/i.test(asked))
      expect(said, drive).toMatch(/disconnect the supply/i);
    if (/motor|brake|disengage/i.test(asked)) expect(said, drive).toMatch(/brake does/i);
    if (kind !== 'sensor-doubt') expect(said, drive).toMatch(/never bypass a fuse or breaker/i);
  }
});

test('people come first: keeping out of the travel is the first caution wherever it stands', () => {
  for (const { cautions } of ALL) {
    const at = cautions.findIndex((caution) => /out of the travel/i.test(caution));
    expect(at).toBeLessThanOrEqual(0);
  }
});

test('what only needs eyes comes before what needs hands', () => {
  for (const kind of FRICTION_KINDS) {
    for (const drive of DRIVES) expect(checksFor(kind, drive, null)[0]).toMatch(/^Look/);
  }
});

test('what is doubted of a record is checked first, and a date sends nobody to the clamp', () => {
  const plain = checksFor('sensor-doubt', 'in-wall', null);
  const ofDoubt = (doubt: Doubt) => checksFor('sensor-doubt', 'in-wall', null, doubt);
  expect(ofDoubt('clipped')[0]).toMatch(/range goes beyond the current at which the motor stalls/);
  expect(ofDoubt('gaps')[0]).toMatch(/plugs and the link/);
  for (const doubt of ['clipped', 'gaps', 'scale', 'flat'] as const) {
    expect(ofDoubt(doubt).slice(1)).toEqual(plain);
  }
  expect(ofDoubt('clock').join('\n')).toMatch(/date and time.*\n.*samples a second.*\n.*date of the strokes/);
  expect(ofDoubt('clock').join('\n')).not.toMatch(/clamp|zero/);
  const cautions = cautionsFor('sensor-doubt');
  for (const check of [...ofDoubt('clock'), ...ofDoubt('gaps')]) {
    expect(cautionsOfCheck(check).length, check).toBeGreaterThan(0);
    for (const caution of cautionsOfCheck(check)) expect(cautions).toContain(caution);
  }
});

describe('of a room that must stay where it is', () => {
  test('nothing is checked that moves it, and something always is, with its cautions', () => {
    for (const { kind, drive, checks, cautions } of ALL) {
      if (kind === 'weak-supply' || kind === 'sensor-doubt') continue;
      const atRest = checksAtRest(checks);
      expect(atRest.length, `${kind} ${drive}`).toBeGreaterThan(0);
      expect(new Set(atRest).size, `${kind} ${drive}`).toBe(atRest.length);
      for (const check of atRest) {
        expect(check).not.toMatch(
          /\brun the room\b|whole stroke|by hand|fully in|listen|turns both|wheels turn|follow/i,
        );
        expect(cautionsOfCheck(check).length, check).toBeGreaterThan(0);
        for (const caution of cautionsOfCheck(check)) expect(cautions, check).toContain(caution);
      }
    }
  });

  test('what only looks at it stays as it is', () => {
    const checks = checksFor('short-travel', 'cable', null);
    expect(checksAtRest(checks).slice(0, 2)).toEqual(checks.slice(0, 2));
    expect(checksAtRest(checks)[2]).toMatch(/^Measure .* with the room where it is/);
  });
});

describe('the cautions of a check', () => {
  test('stand beside every check, and are among those of the warning', () => {
    for (const kind of WARNING_KINDS)
      for (const drive of DRIVES)
        for (const pattern of [null, ...SPIKE_PATTERNS])
          for (const check of checksFor(kind, drive, pattern)) {
            const cautions = cautionsOfCheck(check);
            expect(cautions.length, check).toBeGreaterThan(0);
            for (const caution of cautions) expect(cautionsFor(kind), check).toContain(caution);
          }
  });

  test('a check that brings hands to what the motor drives says to disconnect it', () => {
    const near =
      /^(?:Clean|Count|Look|Run).*(?:teeth|\brack\b|fastener|shoe|cables?\b|drum|terminals|moving parts)/;
    const checks = [...new Set(ALL.flatMap((answer) => answer.checks))].filter((check) => near.test(check));
    expect(checks.length).toBeGreaterThan(12);
    for (const check of checks) expect(cautionsOfCheck(check), check).toContain(CAUTIONS.supply);
  });

  test('are none where nobody knows the check any more', () => {
    expect(cautionsOfCheck('Kick it.')).toEqual([]);
  });
});
