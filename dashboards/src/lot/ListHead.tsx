import { saveCsv } from '../api/saveCsv.ts';
import type { Sending } from '../components/sending/useSending.ts';
import { words } from '../words.ts';

interface ListHeadProps {
  /** How many coaches are shown, and whether more follow. */
  readonly shown: number;
  readonly hasMore: boolean;
  /** The question that the list answers. */
  readonly path: string;
  readonly saving: Sending;
  readonly onChooseAll: () => void;
}

/** How many coaches are shown, and what can be done with all of them. */
export function ListHead({ shown, hasMore, path, saving, onChooseAll }: ListHeadProps) {
  const say = words.lot;
  return (
    <div class="list-head">
      <p class="about" role="status">
        {say.shown(shown, hasMore)}
      </p>
      <button type="button" class="quiet" onClick={onChooseAll}>
        {say.selectShown}
      </button>
      <button
        type="button"
        class="quiet"
        aria-disabled={saving.busy}
        onClick={() => void saving.send(() => saveCsv([path], say.fileName))}
      >
        {saving.busy ? say.saving : say.csvShown}
      </button>
    </div>
  );
}
