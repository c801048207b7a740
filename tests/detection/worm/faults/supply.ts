import { planFault, type Recipe } from '../fault.ts';

/** A corroded lug and a tired battery: too little voltage while the room runs. */
export const tiredSupply: Recipe = {
  name: 'tired supply',
  needs: () => ({ supplyRecorded: true }),
  draw({ room, onset, random }) {
    const scale = room.facts.nominalVolts / 12;
    const target = random.uniform(8.8, 10.1) * scale;
    const totalAmps = room.sides.reduce((sum, { runAmps }) => sum + runAmps, 0);
    return planFault(
      this.name,
      onset,
      { kind: 'weak-supply', severity: 1 - target / room.facts.nominalVolts },
      (condition) => {
        condition.openVolts = Math.min(condition.openVolts, target + 0.9 * scale);
        const drop = condition.openVolts - target;
        condition.addedOhm = Math.max(0, drop / totalAmps - room.wiring.ohm);
      },
    );
  },
};
