/** What air has around a coach, with room to spare; between it and what `AMBIENT_C` takes lies what sensors read. */
const WEATHER_C = { min: -90, max: 70 } as const;

/**
 * The ambient temperature as the analysis takes it: null where it was not recorded, or cannot be weather, as the 85 °C
 * that a sensor reads before it has measured, or a roof in the sun. It is kept and shown as it was sent.
 */
export function weatherOf(ambientC: number | null): number | null {
  const isWeather = ambientC !== null && ambientC >= WEATHER_C.min && ambientC <= WEATHER_C.max;
  return isWeather ? ambientC : null;
}
