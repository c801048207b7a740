import type { DemoScenario } from './demoScenario.ts';

/** Who can sign in to the demo, and by which password: it holds nothing but invented rooms. */
export const DEMO_SIGN_IN: Pick<DemoScenario, 'accountName' | 'password' | 'people' | 'guests'> = {
  accountName: 'Marlpit Cross Coaches',
  password: 'rooms-in-before-rain',
  people: [
    { email: 'ottoline.brandreth@example.com', name: 'Ottoline Brandreth', role: 'dealer' },
    { email: 'jem.tolliver@example.com', name: 'Jem Tolliver', role: 'technician' },
    { email: 'perpetua.lund@example.com', name: 'Perpetua Lund', role: 'owner' },
  ],
  guests: [{ email: 'aldous.wren@example.com', name: 'Aldous Wren', role: 'owner', coach: 'Gulwane' }],
};
