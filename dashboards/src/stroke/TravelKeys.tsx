import type { Stroke, TravelTrace } from '../api/types.ts';
import {
  BandKey,
  LetterKey,
  LineKey,
  MarkKey,
  PhaseKey,
  SamplesKey,
  SupplyKey,
  TurnKey,
} from '../charts/drawn/keys.tsx';
import type { NumberedMark } from '../charts/drawn/marks.ts';
import { quantity, whenText } from '../format.ts';
import { sideName } from '../sideName.ts';
import { strokeWords } from '../words/stroke.ts';
import { words } from '../words.ts';
import { LETTERS } from './overlayChoice.ts';

interface TravelKeysProps {
  readonly stroke: Stroke;
  readonly sides: readonly string[];
  /** Of the sides those that have a line. */
  readonly shown: readonly string[];
  readonly others: readonly Stroke[];
  readonly marks: readonly NumberedMark[];
  readonly travel: TravelTrace | null;
  readonly hasNormal: boolean;
  readonly hasTurns: boolean;
}

/** What each line, mark and ground of the travel picture is. */
export function TravelKeys({
  stroke,
  sides,
  shown,
  others,
  marks,
  travel,
  hasNormal,
  hasTurns,
}: TravelKeysProps) {
  const say = strokeWords;
  const kinds = (['spike', 'dip'] as const).filter((kind) => marks.some((mark) => mark.kind === kind));
  return (
    <>
      {shown.map((side) => (
        <LineKey key={side} text={say.medianOf(sideName(side))} side={sides.indexOf(side)} />
      ))}
      {travel !== null && <SamplesKey text={say.everySample} />}
      {hasNormal && <BandKey text={say.normalBand} />}
      {others.map((other, i) => (
        <LetterKey
          key={other.id}
          letter={LETTERS[i]}
          place={i}
          text={`${whenText(other.startedAt)}, ${words.directions[other.direction ?? 'unknown']}`}
        />
      ))}
      {kinds.map((kind) => (
        <MarkKey key={kind} text={kind === 'spike' ? say.spike : say.dip} dip={kind === 'dip'} />
      ))}
      {hasTurns && <TurnKey text={say.gearTurn} />}
      {travel !== null && travel.supply !== null && <SupplyKey text={say.volts} />}
      {travel !== null && (
        <>
          <PhaseKey text={say.phases.inrush} phase="inrush" />
          <PhaseKey text={say.phases.running} phase="running" />
          {travel.sides.some(({ endStop }) => endStop !== null) && (
            <PhaseKey text={say.phases.endStop} phase="end-stop" />
          )}
        </>
      )}
      {stroke.ambientC !== null && (
        <li>
          {say.ambient}: {quantity(stroke.ambientC, '°C')}
        </li>
      )}
    </>
  );
}
