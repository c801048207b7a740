import { render } from 'preact-render-to-string';
import type { Drawer, DrawnPage, PageToDraw } from '../../server/schemas/drawing.ts';
import { firstQuestions } from './api/early.ts';
import { forgetAnswers, giveAnswers, whatIsMissing } from './api/knownAnswers.ts';
import { SentAlong } from './api/sentAlong.tsx';
import { App } from './app.tsx';
import { DEVICE, readAs, readOn, THIS_DEVICE } from './reader.ts';
import { drawAt, matchPath } from './router.ts';

/** Pages with an answer at a glance. */
const DRAWN = ['/', '/coaches/:id', '/rooms/:id'];

/**
 * Draws a page at one go: what it is drawn from stands in the pages' modules as it does in a browser, and nothing else
 * runs until it is taken away again.
 */
function draw({ path, search, language, answers }: PageToDraw): DrawnPage {
  try {
    drawAt({ pathname: path, search });
    readOn({ language, knowsZone: false });
    giveAnswers(answers);
    let html = '';
    const missing = whatIsMissing(() => {
      html = render(<App />);
    });
    return { html, answersHtml: render(<SentAlong answers={[...answers]} />), missing: [...missing] };
  } finally {
    forgetAnswers();
    readOn(THIS_DEVICE);
    readAs(DEVICE);
    drawAt(null);
  }
}

export const drawer: Drawer = {
  firstQuestions: (path) =>
    DRAWN.some((drawn) => matchPath(drawn, path) !== null) ? firstQuestions(path) : [],
  draw,
};
