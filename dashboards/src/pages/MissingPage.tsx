import { PageTitle } from '../components/frame/PageTitle.tsx';
import { words } from '../words.ts';

export function MissingPage() {
  return (
    <>
      <PageTitle text={words.missing.title} />
      <p>{words.missing.text}</p>
      <p>
        <a href="/">{words.missing.back}</a>
      </p>
    </>
  );
}
