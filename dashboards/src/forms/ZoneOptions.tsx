import { useEffect, useState } from 'preact/hooks';

/** The zones that the browser knows, some four hundred, to complete what is typed: they come once the page stands. */
export function ZoneOptions({ id }: { readonly id: string }) {
  const [zones, setZones] = useState<readonly string[]>([]);
  useEffect(() => setZones(Intl.supportedValuesOf('timeZone')), []);
  return (
    <datalist id={id}>
      {zones.map((name) => (
        <option key={name} value={name} />
      ))}
    </datalist>
  );
}
