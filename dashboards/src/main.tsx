import { render } from 'preact';
import { App } from './app.tsx';
import { keepPagesOnDevice } from './offline.ts';
import './styles/tokens.css';
import './styles/base.css';
import './styles/parts.css';
import './styles/pages.css';
import './styles/coaches.css';
import './styles/forms.css';
import './styles/compare.css';
import './styles/upload.css';
import './styles/print.css';

const place = document.getElementById('app');
if (place === null) throw new Error('The page has no element with the id app.');
render(<App />, place);
keepPagesOnDevice();
