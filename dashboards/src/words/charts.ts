/** What stands around every picture. */
export const chartWords = {
  keys: 'Key',
  fullyIn: 'fully in',
  fullyOut: 'fully out',
  /** Beside a picture of parts of the normal: where that stands. */
  normal: 'normal',

  zoom: {
    title: 'Look closer',
    closer: 'Closer',
    wider: 'Wider',
    back: 'Back along the axis',
    on: 'Forward along the axis',
    all: 'Show all',
    shown: (part: string) => `Shown: ${part}`,
    span: (from: string, to: string) => `${from} to ${to}`,
  },
} as const;
