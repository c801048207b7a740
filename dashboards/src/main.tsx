import { render } from 'preact';
import { askEarly } from './api/early.ts';
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
askEarly(location.pathname);
render(<App />, place);
keepPagesOnDevice();
